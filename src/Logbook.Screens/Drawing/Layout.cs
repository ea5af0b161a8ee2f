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

    // Of the head: that there is more of it, and what can hurt.
    private const int Told = 2;

    /// <summary>
    /// Exactly <paramref name="height"/> lines of at most <paramref name="width"/> columns. On a tiny screen the head goes first, which
    /// is said, and what is last at the foot; what can hurt keeps its beginning, the line that must be seen and the bottom stay.
    /// </summary>
    public Sheet Fill(int width, int height, IReadOnlyList<Line> bottom)
    {
        IReadOnlyList<Line> foot = [.. Foot.Take(Math.Max(1, height - bottom.Count - Kept)), .. bottom];
        var least = Math.Clamp(To - From + 1, 1, Math.Clamp(height - foot.Count - Told, 1, Kept));
        var room = Math.Max(least, height - Head.Count - foot.Count);
        var lost = Head.Count + room + foot.Count - height;
        List<Line> lines = [.. lost > 0 ? Shortened(height - room - foot.Count, width, height > Least) : Head, .. Window(room, width), .. foot];
        lines.RemoveRange(0, Math.Max(0, lines.Count - height));
        return new Sheet([.. lines.Select(l => l.Cut(width))]);
    }

    /// <summary>The head in at most <paramref name="room"/> lines: that there is more, what can hurt from its beginning, the last of the rest.</summary>
    private IEnumerable<Line> Shortened(int room, int width, bool isSaid)
    {
        List<Line> hurts = [.. Head.Where(Hurts)], rest = [.. Head.Where(l => !Hurts(l))];
        var said = isSaid && room > Math.Min(1, hurts.Count) ? 1 : 0;
        var kept = Math.Clamp(room - said, 0, hurts.Count);
        IEnumerable<Line> first = kept == hurts.Count || kept == 0
            ? hurts.Take(kept)
            : [.. hurts.Take(kept - 1), Line.Of(TextWidth.Cut(string.Concat(hurts.Skip(kept - 1).Select(l => l.Text)), width), Look.Hurts)];
        var more = Math.Max(0, room - said - kept);
        return [.. said == 0 ? [] : new[] { More(hurts.Count - kept + rest.Count - more, "above: the screen is too small", width) }, .. first, .. rest.TakeLast(more)];
    }

    private static bool Hurts(Line line) => line.Spans.Count > 0 && line.Spans.All(s => s.Look == Look.Hurts);

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
