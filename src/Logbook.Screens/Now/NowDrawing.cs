using System.Globalization;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>Now as it stands on the screen: what can hurt, the line in one row, what stands out, what is to be done.</summary>
internal static class NowDrawing
{
    private const int FewestForFindings = 4;

    public static Layout Draw(Session session, NowPage page)
    {
        var body = Body(session, page);
        var from = Math.Clamp(page.Scroll, 0, Math.Max(0, body.Count - Room(session)));
        return new Layout(Head(session), [.. body.Skip(from)], 0, 0, []);
    }

    public static int Scrolled(Session session, NowPage page, Keystroke key)
    {
        var beyond = Math.Max(0, Body(session, page).Count - Room(session));
        return Math.Clamp(page.Scroll + (key.Name == KeyName.PageDown ? session.Leaf : -session.Leaf), 0, beyond);
    }

    // Head, message and keys.
    private static int Room(Session session) => Math.Max(1, session.Height - Head(session).Count - View.Bottom(session).Count);

    private static IReadOnlyList<Line> Head(Session session)
    {
        var now = session.Facts.Now;
        var who = session.By is { } by ? Say.Person(session.Site, by) : "nobody is typing";
        return
        [
            Line.Of(new Span($" {now.Site}", Look.Strong), new Span($"   {Say.Day(session.Site, session.Clock)}")).With(new Span(who + " ", Look.Strong), session.Width),
            Line.Of($" {now.ShiftId}: {now.InCharge}"),
        ];
    }

    private static List<Line> Body(Session session, NowPage page)
    {
        List<Line> above = [.. HazardLines.InFull(session), .. Unsaved(session), .. LineRow.Draw(session), .. Rule(session)];
        List<Line> below = [.. Rule(session), .. Rounds.Draw(session), .. CarriedLines.Draw(session), .. StockLines(session), .. FilesDiffer(session)];
        var room = Math.Max(FewestForFindings, Room(session) - above.Count - below.Count);
        return [.. above, .. StandsOut.Draw(session, page.Selected, room), .. below];
    }

    private static IEnumerable<Line> Unsaved(Session session)
    {
        var own = Saving.Unsaved(session) is { } unsaved ? Gutter.Lines("UNSAVED", Look.Watch, $"{unsaved}. r goes on, v saves it", session.Width) : [];
        return own.Concat(session.Left.SelectMany(l => Gutter.Lines("UNSAVED", Look.Watch, $"{Saving.Unsaved(session, l.Draft)}, left behind. u shows it", session.Width)));
    }

    private static IEnumerable<Line> StockLines(Session session)
    {
        var stocks = session.Facts.Now.Stocks.Select(s => $"{s.Title} {s.Value} {(session.Clock - s.At > s.Fresh ? "OLD, " : "")}{Say.Time(session.Site, s.At, session.Clock)}").ToList();
        return stocks.Count == 0 ? [] : Gutter.Lines("stocks", Look.Strong, string.Join(";  ", stocks), session.Width);
    }

    private static IEnumerable<Line> FilesDiffer(Session session) => session.Facts.Now.FilesDiffer
        ? Gutter.Lines("site", Look.Watch, "the site's files differ from those in force: logbook check, then logbook adopt", session.Width)
        : [];

    /// <summary>Parts are set apart where there is room for it.</summary>
    private static IEnumerable<Line> Rule(Session session) =>
        session.Height >= 30 ? [Line.Of(" " + new string('-', Math.Max(0, session.Width - 2)), Look.Faint)] : [];
}
