using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>
/// Now as it stands on the screen: what can hurt, and directly after it what is urgent now (before it where what can hurt fills
/// the screen), the line in one row, what else stands out, what is to be done. Where it is longer than the screen it scrolls:
/// then what stands out and what is due is named below it, and what can hurt above it, once not all of that is in sight.
/// </summary>
internal static class NowDrawing
{
    public static Layout Draw(Session session, NowPage page)
    {
        var now = Of(session, page);
        var top = Math.Clamp(page.Top, 0, Math.Max(0, now.Body.Count - now.Room));
        return new Layout(now.Head, [.. Seen(session, now.Body, top, now.Room)], 0, 0, now.Foot);
    }

    /// <summary>The page with its window moved by a page, or to what is under the mark.</summary>
    public static NowPage Moved(Session session, NowPage page, Keystroke key)
    {
        if (key.Name is KeyName.PageDown or KeyName.PageUp)
        {
            var shown = Of(session, page);
            var by = Math.Max(1, shown.Room - 2) * (key.Name == KeyName.PageDown ? 1 : -1);
            return page with { Top = Math.Clamp(page.Top + by, 0, Math.Max(0, shown.Body.Count - shown.Room)) };
        }

        var count = session.Facts.StandsOut.Count;
        var selected = key.Name == KeyName.Up && page.Selected <= 0 ? -1 : Moving.Move(page.Selected, key, count, session.Leaf);
        var now = Of(session, page with { Selected = selected, Top = 1 });
        // Above the first of what stands out lies what can hurt: there the window goes back to its top.
        var top = selected < 0 ? 0 : Math.Max(Math.Min(page.Top, Math.Max(0, now.Marked.From - 1)), now.Marked.To + 2 - now.Room);
        return page with { Selected = selected, Top = top };
    }

    private static Shown Of(Session session, NowPage page)
    {
        IReadOnlyList<Line> head = Head(session);
        List<Line> hurts = [.. HazardLines.InFull(session)];
        List<Line> above = [.. Upset(session), .. Unsaved(session), .. Handover(session), .. FromGiver(session), .. LineRow.Draw(session), .. Rule(session)];
        var found = StandsOut.Draw(session, page.Selected);
        List<Line> urgent = [.. found.Where(f => f.IsLive).SelectMany(f => f.Lines)];
        List<Line> below = [.. Rule(session), .. ToAnswer(session), .. Rounds.Draw(session), .. Orders(session), .. CarriedLines.Draw(session), .. StockLines(session), .. FilesDiffer(session), .. Server(session)];
        List<Line> Body(IEnumerable<Line> first) => [.. first, .. above, .. found.Where(f => !f.IsLive).SelectMany(f => f.Lines), .. below];
        var body = Body([.. hurts, .. urgent]);
        var room = Reader.Room(session, head, []);
        if (body.Count <= room)
        {
            return new Shown(head, body, [], room, Marked(body, found));
        }

        IReadOnlyList<Line> foot = [.. Shortly(session, page.Top == 0)];
        room = Reader.Room(session, head, foot);
        var fills = hurts.Count + urgent.Count > room - 1;
        body = fills ? Body([.. urgent, .. hurts]) : body;
        var marked = Marked(body, found);
        if (fills || (hurts.Count > 0 && page.Top > 0))
        {
            head = [.. head, .. HazardLines.InShort(session)];
            room = Reader.Room(session, head, foot);
        }

        return new Shown(head, body, foot, room, marked);
    }

    /// <summary>First and last line of what is under the mark.</summary>
    private static (int From, int To) Marked(List<Line> body, IReadOnlyList<StandingOut> found)
    {
        var lines = found.FirstOrDefault(f => f.IsChosen)?.Lines;
        var from = lines is null ? 0 : body.FindIndex(l => ReferenceEquals(l, lines[0]));
        return (from, from + (lines?.Count ?? 1) - 1);
    }

    private static IEnumerable<Line> Seen(Session session, List<Line> body, int top, int room)
    {
        List<Line> seen = [.. body.Skip(top).Take(room)];
        if (room > 3 && top > 0)
        {
            seen[0] = Layout.More(top + 1, "above", session.Width);
        }

        if (room > 3 && body.Count > top + room)
        {
            seen[^1] = Layout.More(body.Count - top - room + 1, "below, Page Down shows them", session.Width);
        }

        return seen;
    }

    private static List<Line> Head(Session session)
    {
        var now = session.Facts.Now;
        var who = session.By is { } by ? Say.Person(session.Site, by) : "nobody is typing: i";
        return
        [
            Line.Of(new Span($" {now.Site}", Look.Strong), new Span($"   {Say.Day(session.Site, session.Clock)}")).With(new Span(who + " ", Look.Strong), session.Width),
            .. InCharge(session, now),
        ];
    }

    /// <summary>Who holds the line, or whom to call, in as many lines as it takes.</summary>
    private static IEnumerable<Line> InCharge(Session session, NowView now) => TextWidth.Wrap($"{now.ShiftId}: {now.InCharge}", session.Width - 2)
        .Select((line, i) => now.Held ? Line.Of(" " + line)
            : i > 0 ? Line.Of(new Span(" "), new Span(line, Look.Watch))
            : Line.Of(new Span($" {line[..Math.Min(line.Length, now.ShiftId.Length + 2)]}"), new Span(line[Math.Min(line.Length, now.ShiftId.Length + 2)..], Look.Watch)));

    /// <summary>An upset, what is unsaved, what else stands out, what is due and a server that has been away for long, a line each, while the page itself shows what can hurt.</summary>
    /// <param name="atTop">What is urgent now is in sight.</param>
    private static IEnumerable<Line> Shortly(Session session, bool atTop)
    {
        foreach (var line in Upset(session, 1).Concat(Unsaved(session, 1).Take(1)))
        {
            yield return line;
        }

        var found = session.Facts.StandsOut.Where(f => HazardLines.Of(session, f.Lead) is null && !(atTop && StandsOut.IsLive(session, f.Lead))).ToList();
        if (found.Count > 0)
        {
            var counts = LevelWords.Count(found.Select(f => f.Lead.Finding.Level));
            var isWorst = found[0] == session.Facts.StandsOut[0];
            yield return Gutter.Lines(isWorst ? "worst" : "next", LevelWords.LookOf(found[0].Lead.Finding.Level), $"{(counts.Length > 0 ? counts : Say.Count(found.Count, "note"))}: {FindingWords.Of(session.Site, found[0].Lead.Finding)}", session.Width, 1).First();
        }

        if (Rounds.Shortly(session) is { Length: > 0 } due)
        {
            yield return Gutter.Lines("due", Look.Strong, due, session.Width, 1).First();
        }

        if (session.Facts.Now.Server is { Watch: true } server)
        {
            yield return Gutter.Lines("server", Look.Watch, server.Text, session.Width, 1).First();
        }
    }

    private static IEnumerable<Line> Upset(Session session, int most = int.MaxValue) => session.Facts.Now.UpsetInWords is { } upset
        ? Gutter.Lines("UPSET", Look.Watch, $"{upset}; d ends it. Rounds but safety points are one line", session.Width, most)
        : [];

    private static IEnumerable<Line> Unsaved(Session session, int most = int.MaxValue)
    {
        var own = Saving.Unsaved(session) is { } unsaved ? Gutter.Lines("UNSAVED", Look.Watch, $"{unsaved}. r goes on, v saves it", session.Width, most) : [];
        return own.Concat(session.Left.SelectMany(l => Gutter.Lines("UNSAVED", Look.Watch, $"{Saving.Unsaved(session, l.Draft)}, left behind. u shows it", session.Width, most)));
    }

    private static IEnumerable<Line> ToAnswer(Session session) => session.Facts.Now.ToAnswer.SelectMany(l => Gutter.Lines(l.Label, Look.Watch, l.Text, session.Width));

    private static IEnumerable<Line> FromGiver(Session session) => session.Facts.Now.FromGiver.SelectMany(l => Gutter.Lines(l.Label, Look.Strong, l.Text, session.Width));

    /// <summary>What is unfinished about the handover; that nobody holds the line stands at the top.</summary>
    private static IEnumerable<Line> Handover(Session session) => session.Facts.Now.Unfinished.Skip(session.Facts.Now.Held ? 0 : 1)
        .SelectMany((text, i) => Gutter.Lines(i == 0 ? "handover" : "", Look.Strong, text, session.Width, 2))
        .Concat(session.Facts.Now.ClockJumps.SelectMany(j => Gutter.Lines("clock", Look.Watch, $"was set back {Say.Ref(j.Id)}; nobody has said why: logbook clock ack", session.Width)));

    /// <summary>Orders that the one who is typing has not read, and those that ended since that one read them.</summary>
    private static IEnumerable<Line> Orders(Session session) => session.Facts.Now.Orders.Where(o => session.By is { } by && !o.Seen.ContainsKey(by))
        .SelectMany(o => Gutter.Lines("order", Look.Watch, $"not read by you: {o.Text} {Say.Ref(o.Id)}", session.Width, session.Height >= 34 ? 3 : 1))
        .Concat(session.Facts.Now.Withdrawn.Where(o => session.By is { } by && o.EndIsNewTo(by))
            .SelectMany(o => Gutter.Lines("order", Look.Watch, $"WITHDRAWN: {o.Text} {Say.Ref(o.Withdrawn!.Seq)}", session.Width, session.Height >= 34 ? 3 : 1)));

    private static IEnumerable<Line> StockLines(Session session)
    {
        var stocks = session.Facts.Now.Stocks.GroupBy(s => s.Area, StringComparer.Ordinal).Select(tank => Tank(session, [.. tank.OrderBy(s => s.Lasts)])).ToList();
        return stocks.Count == 0 ? [] : Gutter.Lines("stocks", Look.Strong, string.Join(";  ", stocks), session.Width);
    }

    /// <summary><c>Green liquor tank 60.6 % 02:21, lasts 4.5 h</c>; where several lie in one area, each by its own name.</summary>
    private static string Tank(Session session, List<Stock> held)
    {
        var one = held.Count(s => !s.Lasts) == 1;
        var words = held.Select((s, i) => $"{(!one ? s.Title + " " : s.Lasts ? "lasts " : "")}{s.Value}{(session.Clock - s.At > s.Fresh ? " OLD," : "")}"
            + (i > 0 && held[i - 1].At == s.At ? "" : $" {Say.Time(session.Site, s.At, session.Clock)}"));
        return (one ? AreaWords.Of(held[0].Area) + " " : "") + string.Join(", ", words);
    }

    private static IEnumerable<Line> FilesDiffer(Session session) => session.Facts.Now.FilesDiffer
        ? Gutter.Lines("site", Look.Watch, "the site's files differ from those in force: logbook check, then logbook adopt", session.Width)
        : [];

    private static IEnumerable<Line> Server(Session session) =>
        session.Facts.Now.Server is { } server ? Gutter.Lines("server", server.Watch ? Look.Watch : Look.Strong, server.Text, session.Width, most: 2) : [];

    /// <summary>Parts are set apart where there is room for it.</summary>
    private static IEnumerable<Line> Rule(Session session) =>
        session.Height >= 30 ? [Line.Of(" " + new string('-', Math.Max(0, session.Width - 2)), Look.Faint)] : [];

    /// <param name="Marked">First and last line of what is under the mark.</param>
    private sealed record Shown(IReadOnlyList<Line> Head, List<Line> Body, IReadOnlyList<Line> Foot, int Room, (int From, int To) Marked);
}
