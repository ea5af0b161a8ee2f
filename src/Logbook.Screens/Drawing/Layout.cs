namespace Logbook.Screens;

/// <summary>What a page puts on the screen: its head, the part that scrolls, and what stands at the bottom.</summary>
/// <param name="Body">All of it; the layout shows the stretch around <paramref name="From"/> to <paramref name="To"/>.</param>
/// <param name="From">First line of the body that must be seen.</param>
/// <param name="To">Last line of the body that must be seen.</param>
internal sealed record Layout(IReadOnlyList<Line> Head, IReadOnlyList<Line> Body, int From, int To, IReadOnlyList<Line> Foot)
{
    /// <summary>The first line of the body that is shown, on a page that is read from its top; null where a mark moves.</summary>
    public int? Top { get; init; }

    // On fewer lines than this every one is needed.
    private const int Least = 6;

    // So many lines are left to what must be seen and to what is above it, whatever stands at the foot.
    private const int Kept = 3;

    /// <summary>Exactly <paramref name="height"/> lines of at most <paramref name="width"/> columns. On a tiny screen the head goes first, which is said, and what is last at the foot; the line that must be seen and the bottom stay.</summary>
    public Sheet Fill(int width, int height, IReadOnlyList<Line> bottom)
    {
        IReadOnlyList<Line> foot = [.. Foot.Take(Math.Max(1, height - bottom.Count - Kept)), .. bottom];
        var room = Math.Max(1, height - Head.Count - foot.Count);
        List<Line> lines = [.. Head, .. Window(room, width), .. foot];
        var lost = lines.Count - height;
        if (lost > 0)
        {
            lines.RemoveRange(0, lost);
            lines[0] = height > Least ? More(lost + 1, "above: the screen is too small", width) : lines[0];
        }

        return new Sheet([.. lines.Select(l => l.Cut(width))]);
    }

    /// <summary>The stretch of the body with what must be seen in its middle; the edge lines say how much lies beyond them.</summary>
    private IEnumerable<Line> Window(int room, int width)
    {
        if (Body.Count <= room)
        {
            return Body.Concat(Enumerable.Repeat(Line.Empty, room - Body.Count));
        }

        var middle = Math.Clamp(((From + To + 1) / 2) - (room / 2), 0, Body.Count - room);
        var marked = Math.Clamp(To + 1 - room, middle, Body.Count - room); // of a few lines the last one
        var top = Top is { } first ? Math.Clamp(first, 0, Body.Count - room) : marked;
        Line[] seen = [.. Body.Skip(top).Take(room)];
        if (room > 3 && top > 0 && (From > top || Top is not null))
        {
            seen[0] = More(top + 1, "above", width);
        }

        var below = Body.Count - top - room;
        if (room > 3 && below > 0 && (To < top + room - 1 || Top is not null))
        {
            seen[^1] = More(below + 1, "below", width);
        }

        return seen;
    }

    internal static Line More(int count, string where, int width) =>
        Line.Of(TextWidth.Right($"{count} more {(count == 1 ? "line" : "lines")} {where} ", width), Look.Faint);
}
