using System.Globalization;
using Logbook.Handover;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Screens;

/// <summary>The log as it stands on the screen: one line a record, parted by days. Only what is seen is drawn, however long the log.</summary>
internal static class LogDrawing
{
    // Columns: 19:00, or longer where the day is another; #100000, a code or a name, an area.
    private const int Time = 7;
    private const int Number = 7;
    private const int Area = 19;

    // Lines of the record under the mark.
    private const int Most = 3;

    private static bool IsWide(Session session) => session.Width >= 100;

    private static int Who(Session session) => IsWide(session) ? 18 : 6;

    public static Layout Draw(Session session, LogPage page)
    {
        IReadOnlyList<Line> head = [Head(session, page), .. HazardLines.InShort(session), Columns(session)];
        var room = Reader.Room(session, head, []);
        var first = Math.Max(0, Math.Min(page.Selected - (room / 2), page.Shown.Count - room + 1));
        var body = new List<Line>();
        var (from, end) = (0, 0);
        for (var i = first; i < page.Shown.Count && body.Count < 2 * room; i++)
        {
            if (i == 0 || Day(session, page.Shown[i]) != Day(session, page.Shown[i - 1]))
            {
                body.Add(Line.Of($" {Day(session, page.Shown[i])}", Look.Strong));
            }

            from = i == page.Selected ? body.Count : from;
            body.AddRange(Record(session, page.Shown[i], i == page.Selected));
            end = i == page.Selected ? body.Count : end;
        }

        var top = Math.Clamp(Math.Min(from, end + 1 - room), 0, Math.Max(0, body.Count - 1));
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
        return Line.Of(new Span(" Log, newest record first", Look.Strong), new Span($"   {what}{far}"));
    }

    /// <summary>The days part the records by when they were typed; the time is when it was read or happened.</summary>
    public static Line Columns(Session session) => Line.Of(
        "   " + TextWidth.Fit("read at", Time) + " " + TextWidth.Fit("record", Number) + " " + TextWidth.Fit("by", Who(session)) + " " + (IsWide(session) ? TextWidth.Fit("place", Area) + " " : "") + "what", Look.Faint);

    private static string Day(Session session, LogLine line) => Calendar.ToSite(session.Site, line.Entered).ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>One line; the record under the mark in up to three.</summary>
    public static IEnumerable<Line> Record(Session session, LogLine line, bool chosen)
    {
        var wide = IsWide(session);
        var at = Say.Time(session.Site, line.At, line.Entered);
        var time = TextWidth.Fit(at, Math.Max(Time, TextWidth.Of(at)));
        var number = TextWidth.Fit(FormattableString.Invariant($"#{line.Seq}"), Number);
        var who = TextWidth.Fit(wide ? Say.Person(session.Site, line.By) : line.By, Who(session));
        var area = wide ? TextWidth.Fit(line.Area.Replace('-', ' '), Area) + " " : "";
        var text = $" {(chosen ? ">" : " ")} {time} {number} {who} {area}";
        var look = chosen ? Look.Chosen : Look.Plain;
        var worst = line.Worst is { } level ? LevelWords.Of(level) : "";
        return TextWidth.Wrap($"{worst} {line.Words}", session.Width - TextWidth.Of(text), chosen ? Most : 1).Select((words, i) => i == 0
            ? Line.Of(new Span(text, look), new Span(words[..Math.Min(worst.Length, words.Length)], chosen ? look : LevelWords.LookOf(line.Worst)), new Span(words[Math.Min(worst.Length, words.Length)..], look))
            : Line.Of(new Span(new string(' ', TextWidth.Of(text)) + words, look)));
    }
}
