using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What can hurt: on Now each in full, on the other pages each by its word and place. Never a count.</summary>
internal static class HazardLines
{
    public static IEnumerable<Line> InFull(Session session) => session.Facts.Now.Hazards.SelectMany(h =>
        Gutter.Lines(h.Word.ToUpperInvariant(), Look.Hurts, session.Height >= 34 ? h.Text : h.Brief, session.Width, rest: Look.Strong));

    public static IEnumerable<Line> InShort(Session session)
    {
        var hazards = session.Facts.Now.Hazards;
        return hazards.Count == 0
            ? []
            : TextWidth.Wrap(string.Join("; ", hazards.Select(Name).Distinct(StringComparer.Ordinal)), session.Width - 2).Select(l => Line.Of(" " + l, Look.Hurts));
    }

    /// <summary>The hazard that tells of a finding; null when none does.</summary>
    public static HazardLine? Of(Session session, OpenFinding finding) =>
        session.Facts.Now.Hazards.FirstOrDefault(h => h.Findings.Any(f => f.Seq == finding.Seq && f.Number == finding.Number));

    /// <summary>Its word and which thing it is.</summary>
    public static string Name(HazardLine hazard) => $"{hazard.Word.ToUpperInvariant()} {hazard.Name}";
}
