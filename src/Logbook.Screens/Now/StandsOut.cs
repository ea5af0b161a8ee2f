using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What stands out, worst first, each as long as its level deserves.</summary>
internal static class StandsOut
{
    /// <summary>The lines, and which of them are under the mark.</summary>
    public static (IReadOnlyList<Line> Lines, int From, int To) Draw(Session session, int selected)
    {
        var findings = session.Facts.Now.StandsOut;
        if (findings.Count == 0)
        {
            return ([Line.Of(new string(' ', Gutter.Wide) + "nothing recorded stands out", Look.Faint)], 0, 0);
        }

        selected = Math.Min(selected, findings.Count - 1);
        var (lines, from, to) = (new List<Line>(), 0, 0);
        for (var i = 0; i < findings.Count; i++)
        {
            var top = lines.Count;
            lines.AddRange(Draw(session, findings[i], i, i == selected));
            (from, to) = i == selected ? (top, lines.Count - 1) : (from, to);
        }

        return (lines, from, to);
    }

    private static IEnumerable<Line> Draw(Session session, OpenFinding open, int row, bool chosen)
    {
        var finding = open.Finding;
        var tall = session.Height >= 34;
        var most = finding.Level switch { Level.Urgent => tall ? 5 : 3, Level.Watch => tall ? 3 : 2, _ => tall ? 2 : 1 };
        var word = $"{(chosen ? ">" : " ")}{(row < 9 ? $"{row + 1}" : " ")} {LevelWords.Of(finding.Level)}";
        var text = HazardLines.Of(session, open) is { } told ? $"stands above: {HazardLines.Name(told)}" : FindingWords.Of(session.Site, finding);
        return Lines(word, LevelWords.LookOf(finding.Level), $"{Say.Time(session.Site, open.At, session.Clock)}  {text}", session.Width, most, chosen);
    }

    private static IEnumerable<Line> Lines(string word, Look look, string text, int width, int most, bool chosen)
    {
        var lines = TextWidth.Wrap(text, width - Gutter.Wide, most);
        return lines.Select((line, i) => Line.Of(
            i == 0 ? new Span(TextWidth.Fit(word, Gutter.Wide - 1), look) : new Span(new string(' ', Gutter.Wide - 1)), new Span(" " + line, chosen ? Look.Chosen : Look.Plain)));
    }
}
