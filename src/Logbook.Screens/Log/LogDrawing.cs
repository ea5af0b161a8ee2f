using System.Globalization;
using Logbook.Handover;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Screens;

/// <summary>The log as it stands on the screen: one line a record, parted by days. Only what is seen is drawn, however long the log.</summary>
internal static class LogDrawing
{
    public static Layout Draw(Session session, LogPage page)
    {
        IReadOnlyList<Line> head = [Head(session, page), .. HazardLines.InShort(session)];
        var room = Reader.Room(session, head, []);
        var first = Math.Max(0, Math.Min(page.Selected - (room / 2), page.Shown.Count - room + 1));
        var body = new List<Line>();
        var marked = 0;
        for (var i = first; i < page.Shown.Count && body.Count < 2 * room; i++)
        {
            if (i == 0 || Day(session, page.Shown[i]) != Day(session, page.Shown[i - 1]))
            {
                body.Add(Line.Of($" {Day(session, page.Shown[i])}", Look.Strong));
            }

            marked = i == page.Selected ? body.Count : marked;
            body.Add(Record(session, page.Shown[i], i == page.Selected));
        }

        var top = Math.Clamp(marked + 2 - room, 0, Math.Max(0, body.Count - 1));
        List<Line> seen = [.. body.Skip(top).Append(End(page)).Take(room)];
        return new Layout(head, seen, 0, 0, []);
    }

    private static Line End(LogPage page) => (page.Oldest > 1, page.Shown.Count) switch
    {
        (true, 0) => Line.Of(" nothing found so far; Down looks further back", Look.Faint),
        (true, _) => Line.Of(" older records follow", Look.Faint),
        (false, 0) => Line.Of(page.Filter.IsEmpty ? " the log is empty" : " no record has these words", Look.Faint),
        _ => Line.Empty,
    };

    private static Line Head(Session session, LogPage page)
    {
        var what = page.Filter.IsEmpty ? "every record" : string.Create(CultureInfo.InvariantCulture, $"{page.Shown.Count} with '{page.Filter.Text}'");
        var far = page.Read.Count > 0 && page.Oldest > 1 ? $", back to {Say.Day(session.Site, page.Read[^1].Entered)}" : "";
        return Line.Of(new Span(" Log, newest first", Look.Strong), new Span($"   {what}{far}"));
    }

    private static string Day(Session session, LogLine line) => Calendar.ToSite(session.Site, line.Entered).ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    public static Line Record(Session session, LogLine line, bool chosen)
    {
        var wide = session.Width >= 100;
        var time = TextWidth.Fit(Say.Time(session.Site, line.At, line.Entered), 6);
        var who = TextWidth.Fit(wide ? Say.Person(session.Site, line.By) : line.By, wide ? 18 : 6);
        var area = TextWidth.Fit(line.Area.Replace('-', ' '), wide ? 19 : 0);
        var text = $" {(chosen ? ">" : " ")} {time} {who} {(wide ? area + " " : "")}";
        var look = chosen ? Look.Chosen : Look.Plain;
        var worst = line.Worst is { } level ? LevelWords.Of(level) : "";
        return Line.Of(new Span(text, look), new Span(TextWidth.Fit(worst, 6), chosen ? look : LevelWords.LookOf(line.Worst)), new Span(" " + line.Words, look));
    }
}
