using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>What can hurt: on Now each in full, on the other pages each by its word and place. Never a count.</summary>
internal static class HazardLines
{
    public static IEnumerable<Line> InFull(Session session) => session.Facts.Now.Hazards.SelectMany(h =>
        Gutter.Lines(h.Word.ToUpperInvariant(), Look.Hurts, $"{h.Text}", session.Width, rest: Look.Strong));

    public static IEnumerable<Line> InShort(Session session)
    {
        var hazards = session.Facts.Now.Hazards;
        return hazards.Count == 0
            ? []
            : TextWidth.Wrap(string.Join("; ", hazards.Select(h => $"{h.Word.ToUpperInvariant()} {Place(h)}").Distinct(StringComparer.Ordinal)), session.Width - 2).Select(l => Line.Of(" " + l, Look.Hurts));
    }

    /// <summary>The place stands before the first colon or comma.</summary>
    private static string Place(HazardLine hazard) => hazard.Text.Split(':', ',')[0];
}
