using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What stands out, worst first, as much as there is room for around the one under the mark.</summary>
internal static class StandsOut
{
    public static IReadOnlyList<Line> Draw(Session session, int selected, int room)
    {
        var findings = session.Facts.Now.StandsOut;
        if (findings.Count == 0)
        {
            return [Line.Of(new string(' ', Gutter.Wide) + "nothing recorded stands out", Look.Faint)];
        }

        selected = Math.Min(selected, findings.Count - 1);
        var each = findings.Select((f, i) => Draw(session, f, i, i == selected).ToList()).ToList();
        var first = 0;
        while (first < selected && each.Skip(first).Take(selected - first + 1).Sum(l => l.Count) > room - 1)
        {
            first++;
        }

        var lines = new List<Line>();
        var shown = first;
        while (shown < each.Count && (lines.Count + each[shown].Count < room || (shown == each.Count - 1 && lines.Count + each[shown].Count <= room)))
        {
            lines.AddRange(each[shown++]);
        }

        if (shown < each.Count)
        {
            lines.Add(Line.Of($"{new string(' ', Gutter.Wide)}{More(findings.Skip(shown).Select(f => f.Finding.Level).ToList())}; Down shows them", Look.Faint));
        }

        return [.. lines.Take(room)];
    }

    private static string More(List<Level> levels) =>
        LevelWords.Count(levels) is { Length: > 0 } counts ? $"and {levels.Count} more, {counts}" : $"and {Say.Count(levels.Count, "note")} more";

    private static IEnumerable<Line> Draw(Session session, OpenFinding open, int row, bool chosen)
    {
        var finding = open.Finding;
        var tall = session.Height >= 34;
        var most = finding.Level switch { Level.Urgent => tall ? 5 : 3, Level.Watch => tall ? 3 : 2, _ => tall ? 2 : 1 };
        var word = $"{(chosen ? ">" : " ")}{(row < 9 ? $"{row + 1}" : " ")} {LevelWords.Of(finding.Level)}";
        return Lines(word, LevelWords.LookOf(finding.Level), $"{Say.Time(session.Site, open.At, session.Clock)}  {FindingWords.Of(session.Site, finding)}", session.Width, most, chosen);
    }

    private static IEnumerable<Line> Lines(string word, Look look, string text, int width, int most, bool chosen)
    {
        var lines = TextWidth.Wrap(text, width - Gutter.Wide, most);
        return lines.Select((line, i) => Line.Of(
            i == 0 ? new Span(TextWidth.Fit(word, Gutter.Wide - 1), look) : new Span(new string(' ', Gutter.Wide - 1)), new Span(" " + line, chosen ? Look.Chosen : Look.Plain)));
    }
}
