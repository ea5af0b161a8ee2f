using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>One of what stands out, as it stands on the screen.</summary>
/// <param name="IsLive">Urgent, and not told by what can hurt: it stands directly beside that.</param>
internal sealed record StandingOut(IReadOnlyList<Line> Lines, bool IsChosen, bool IsLive);

/// <summary>What stands out, worst first, each as long as its level deserves; urgent whole.</summary>
internal static class StandsOut
{
    public static IReadOnlyList<StandingOut> Draw(Session session, int selected)
    {
        var findings = session.Facts.StandsOut;
        selected = Math.Min(selected, findings.Count - 1);
        return findings.Count == 0
            ? [new StandingOut([Line.Of(new string(' ', Gutter.Wide) + "nothing recorded stands out", Look.Faint)], false, false)]
            : [.. findings.Select((f, i) => new StandingOut([.. Draw(session, f.Lead, i, i == selected), .. Under(session, f, i == selected)], i == selected, IsLive(session, f.Lead)))];
    }

    /// <summary>Urgent, and not told by what can hurt.</summary>
    public static bool IsLive(Session session, OpenFinding open) => open.Finding.Level == Level.Urgent && HazardLines.Of(session, open) is null;

    private static IEnumerable<Line> Draw(Session session, OpenFinding open, int row, bool chosen)
    {
        var finding = open.Finding;
        var tall = session.Height >= 34;
        var most = finding.Level switch { Level.Urgent => int.MaxValue, Level.Watch => tall ? 3 : 2, _ => tall ? 2 : 1 };
        var word = $"{(chosen ? ">" : " ")}{(row < 9 ? $"{row + 1}" : " ")} {LevelWords.Of(finding.Level)}";
        var text = HazardLines.Of(session, open) is { } told ? $"stands above: {HazardLines.Name(told)}" : FindingWords.Of(session.Site, finding);
        return Lines(word, LevelWords.LookOf(finding.Level), $"{Say.Time(session.Site, open.At, session.Clock)}  {text}", session.Width, most, chosen);
    }

    /// <summary>What follows from it, in a line of its own that nothing cuts.</summary>
    private static IEnumerable<Line> Under(Session session, Folded<OpenFinding> found, bool chosen) => found.Following.Count == 0
        ? []
        : Lines("", Look.Plain, Folding.Words(session.Site, found.Following.Select(f => f.Finding)), session.Width, int.MaxValue, chosen);

    private static IEnumerable<Line> Lines(string word, Look look, string text, int width, int most, bool chosen)
    {
        var lines = TextWidth.Wrap(text, width - Gutter.Wide, most);
        return lines.Select((line, i) => Line.Of(
            i == 0 ? new Span(TextWidth.Fit(word, Gutter.Wide - 1), look) : new Span(new string(' ', Gutter.Wide - 1)), new Span(" " + line, chosen ? Look.Chosen : Look.Plain)));
    }
}
