using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>The line in one row of marks, in the liquor's order, and in words whatever is not quiet.</summary>
internal static class LineRow
{
    // What is quiet is not said in words.
    private static readonly (char Mark, string Words, Look Look)[] Marks = [.. LineMarks.All.Where(m => m.Mark != '.').Select(m => (m.Mark, m.Words, LookOf(m.Mark)))];

    public static IEnumerable<Line> Draw(Session session)
    {
        var line = session.Facts.Now.Line;
        var groups = Marks.Select(m => (m.Mark, m.Words, m.Look, Areas: line.Where(a => a.Mark == m.Mark).Select(a => a.Area.Replace('-', ' ')).ToList())).Where(g => g.Areas.Count > 0)
            .Select(g => new Span($"{g.Mark} {Words(line, g.Words, g.Areas)}", g.Look)).ToList();
        List<Span> row = [new Span(" " + TextWidth.Fit("line", Gutter.Wide - 1), Look.Strong), .. line.SelectMany((a, i) => new[] { new Span(i == 0 ? "" : " "), new Span(a.Mark.ToString(), LookOf(a.Mark)) })];
        if (groups.Count == 0)
        {
            row.Add(new Span("  nothing stands out along it"));
        }

        foreach (var group in groups)
        {
            if (row.Sum(s => TextWidth.Of(s.Text)) + TextWidth.Of(group.Text) + 2 > session.Width && row.Count > 1)
            {
                yield return new Line(row);
                row = [];
            }

            if (row.Count > 0)
            {
                row.AddRange([new Span("  "), group]);
                continue;
            }

            foreach (var wrapped in Gutter.Lines("", Look.Plain, group.Text, session.Width, rest: group.Look))
            {
                yield return wrapped;
            }
        }

        if (row.Count > 0)
        {
            yield return new Line(row);
        }
    }

    /// <summary>Whichever is shorter: those of which it is true, or the others.</summary>
    private static string Words(IReadOnlyList<(string Area, char Mark)> line, string words, List<string> areas)
    {
        var others = line.Select(a => a.Area.Replace('-', ' ')).Except(areas, StringComparer.Ordinal).ToList();
        return others.Count == 0 ? $"{words} along the whole line"
            : areas.Count > 2 * others.Count ? $"{words} but of {string.Join(", ", others)}"
            : $"{words}: {string.Join(", ", areas)}";
    }

    private static Look LookOf(char mark) => mark switch
    {
        '!' => Look.Urgent,
        '*' => Look.Hurts,
        '?' => Look.Watch,
        'x' => Look.Strong,
        _ => Look.Plain,
    };
}
