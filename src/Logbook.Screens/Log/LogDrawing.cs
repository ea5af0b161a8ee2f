using System.Globalization;
using Logbook.Handover;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Screens;

/// <summary>The log as it stands on the screen: one line a record, parted by days.</summary>
internal static class LogDrawing
{
    public static Layout Draw(Session session, LogPage page)
    {
        var shown = page.Shown;
        var body = new List<Line>();
        var (from, to) = (0, 0);
        var day = "";
        for (var i = 0; i < shown.Count; i++)
        {
            var top = body.Count;
            if (Day(session, shown[i]) is var next && next != day)
            {
                day = next;
                body.Add(Line.Of($" {day}", Look.Strong));
            }

            if (i == page.Selected)
            {
                (from, to) = (top, body.Count);
            }

            body.Add(Draw(session, shown[i], i == page.Selected));
        }

        if (page.Oldest > 1)
        {
            body.Add(Line.Of(shown.Count == 0 ? " nothing found so far; Down looks further back" : " older records follow", Look.Faint));
        }
        else if (shown.Count == 0)
        {
            body.Add(Line.Of(page.Filter.Length == 0 ? " the log is empty" : " no record has these words", Look.Faint));
        }

        return new Layout([Head(session, page, shown.Count), .. HazardLines.InShort(session)], body, from, to, []);
    }

    private static Line Head(Session session, LogPage page, int shown)
    {
        var what = page.Filter.Length == 0 ? "every record" : $"records with '{page.Filter}'";
        var far = page.Read.Count > 0 && page.Oldest > 1 ? $", read back to {Say.Day(session.Site, page.Read[^1].Entered)}" : "";
        return Line.Of(new Span(" Log, newest first", Look.Strong), new Span($"   {what}{(page.Filter.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $": {shown}"))}{far}"));
    }

    private static string Day(Session session, LogLine line) => Calendar.ToSite(session.Site, line.Entered).ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    private static Line Draw(Session session, LogLine line, bool chosen)
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
