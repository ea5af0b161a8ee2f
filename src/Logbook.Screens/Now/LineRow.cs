using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>The line in one row of marks, in the liquor's order, and in words whatever is not quiet.</summary>
internal static class LineRow
{
    private static readonly (char Mark, string Words, Look Look)[] Marks =
    [
        ('!', "urgent", Look.Urgent), ('?', "watch", Look.Watch), ('x', "not running", Look.Strong), ('-', "no fresh reading", Look.Plain),
    ];

    public static IEnumerable<Line> Draw(Session session)
    {
        var line = session.Facts.Now.Line;
        var marks = string.Join(' ', line.Select(a => a.Mark));
        var words = Marks.Select(m => (m.Words, m.Look, Areas: line.Where(a => a.Mark == m.Mark).Select(a => a.Area.Replace('-', ' ')).ToList())).Where(m => m.Areas.Count > 0).ToList();
        var quiet = words.Count == 0 ? "nothing stands out along the line" : "";
        yield return Line.Of([new Span(" " + TextWidth.Fit("line", 9), Look.Strong), .. line.SelectMany(a => new[] { new Span(a.Mark.ToString(), LookOf(a.Mark)), new Span(" ") }), new Span("  " + quiet)])
            .With(new Span(session.Width >= 100 ? "raw green liquor to laboratory, as the liquor runs " : "", Look.Faint), session.Width);
        foreach (var said in words)
        {
            foreach (var row in Gutter.Lines("", said.Look, $"{said.Words}: {string.Join(", ", said.Areas)}", session.Width))
            {
                yield return row;
            }
        }
    }

    private static Look LookOf(char mark) => Marks.FirstOrDefault(m => m.Mark == mark).Look;
}
