using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What matters now.</summary>
/// <param name="Selected">Which of what stands out is under the mark; -1 while the page is read from its top.</param>
/// <param name="Top">The first line that is shown, on a screen that cannot hold it all.</param>
internal sealed record NowPage(int Selected, int Top) : Page
{
    private static readonly TimeSpan LeftAfter = TimeSpan.FromMinutes(1);

    private static readonly KeyTable Table = new(
        new KeyRow("1-9", "open", "Opens what stands out to its evidence.", key => key.Digit is >= 1, (session, key, _) => OpenFinding(session, key.Digit!.Value - 1)) with { WhyNot = NothingStandsOut },
        KeyRow.Named("Enter", "", "Opens what is under the mark.", (session, _, _) => OpenFinding(session, Math.Clamp(Of(session).Selected, 0, session.Facts.StandsOut.Count - 1)), KeyName.Enter) with { WhyNot = NothingStandsOut },
        KeyRow.Letter('r', "round", "Types a round.", (session, _) => Next.Of(session.Open(new ChoosePage(null)))),
        KeyRow.Letter('h', "handover", "Hands the line over or takes it over.", (session, _) => Handing.Open(session)) with { WhyNot = Handing.WhyNot },
        KeyRow.Letter('l', "log", "Every record, the newest first.", (session, _) => LogReading.Open(session)),
        KeyRow.Letter('g', "graph", "The point under the mark over time; any other by its name.", (session, _) => Graph(session)),
        KeyRow.Letter('a', "audit", "Checks missed, late or not taken, what is carried too long, and what is only to be looked at.", (session, setting) => AuditPage.Open(session, setting)),
        KeyRow.Letter('c', "carried", "What outlives the shift, looked at one by one: still so, changed, not seen.", (session, _) => Next.Of(session.Open(new CarriedPage(0)))),
        KeyRow.Letter('i', "who", "Says who is typing.", (session, _) => Next.Of(session.Open(WhoPage.Typing()))) with { WhyNot = DraftFirst },
        KeyRow.Letter('v', "save", "Saves what is typed and not in the journal.", (session, _) => Next.Of(session, Saving.All(session.Draft!))) with { WhyNot = s => s.Draft is null ? "nothing is unsaved" : null },
        KeyRow.Letter('u', "unsaved", "Shows what an earlier session left unsaved.", (session, _) => Next.Of(session.Open(new LeftPage()))) with { WhyNot = s => s.Left.IsEmpty ? "no session left anything behind" : null },
        KeyRow.Named("Up Down", "", "Moves the mark; Page Up and Page Down move the page.", Move, Moving.Keys),
        KeyRow.Letter('q', "leave", "Leaves the program; once more when something is unsaved.", Leave),
        KeyRow.Letter('e', "equipment", "Says what a piece of equipment does: running, stopped, in acid, out.", (session, _) => StateForm.Open(session)) with { WhyNot = RecordAsks.NobodyTypes },
        KeyRow.Letter('o', "orders", "Standing orders to be read, and notes to other departments.", (session, _) => Next.Of(session.Open(new OrdersPage(0)))),
        KeyRow.Letter('d', "upset", "Declares an upset from a time: rounds but safety points become one line. Ends it when one lasts.", (session, _) => UpsetAsks.Open(session)) with { WhyNot = UpsetAsks.WhyNot },
        KeyRow.Letter('m', "remark", "A remark that belongs to no round.", (session, _) => Next.Of(session.Open(Remark()))) with { WhyNot = RecordAsks.NobodyTypes },
        UsualKeys.Find,
        KeyRow.Named("Esc", "", "Nothing lies behind this page; q leaves the program.", (session, _, _) => Next.Of(session.Say("q leaves the program")), KeyName.Esc),
        UsualKeys.Help);

    /// <summary>The letters of this page, for the finder.</summary>
    public static IEnumerable<KeyRow> Commands => Table.Rows.Where(r => r.Keys.Length == 1 && r.Keys is not ("/" or "q" or "?"));

    public override KeyTable Keys => Table;

    public override (string Title, IReadOnlyList<string> Marks) Legend => ("Marks of the line, one a system, in the order in which the liquor runs",
        [.. LineMarks.All.Select(m => $"{m.Mark}  {m.Words}")]);

    public override Layout Draw(Session session) => NowDrawing.Draw(session, this);

    /// <summary>Whoever comes by sees what is urgent: a page that nobody moves goes back to its top.</summary>
    public static Session Left(Session session) =>
        session.Top is NowPage { Top: > 0 } && session.Clock - session.LastKey >= LeftAfter ? session.Home() : session;

    private static NowPage Of(Session session) => (NowPage)session.Top;

    private static string? NothingStandsOut(Session session) => session.Facts.StandsOut.Count == 0 ? "nothing stands out" : null;

    private static Next Graph(Session session) =>
        session.Facts.StandsOut.ElementAtOrDefault(Of(session).Selected)?.Lead.Finding.Point is { } tag && session.Site.FindPoint(tag) is { } point
            ? GraphPage.Open(session, point.Tag)
            : Next.Of(session.Open(FinderPage.ForPoint("Which point?", GraphPage.Open)));

    private static AskPage Remark() => new("Remark", "a few words", "", (asking, text, _) => Next.Of(asking, new WriteIt(new AddRemark(asking.By!, text, null))));

    private static string? DraftFirst(Session session) => session.Draft is null ? null : "v saves first what is typed";

    private static Next OpenFinding(Session session, int row)
    {
        var standsOut = session.Facts.StandsOut;
        return row < standsOut.Count && standsOut[row] is var open
            ? Next.Of(session.Put(Of(session) with { Selected = row }).Open(FindingsPage.Of(session, open)))
            : Next.Of(session.Say($"only {standsOut.Count} stand out"));
    }

    private static Next Move(Session session, Keystroke key, Setting setting)
    {
        return Next.Of(session.Put(NowDrawing.Moved(session, Of(session), key)));
    }

    /// <summary>Leaving with something unsaved takes the key twice: it stays in the draft and is offered again.</summary>
    private static Next Leave(Session session, Setting setting)
    {
        if (Saving.Unsaved(session) is { } unsaved && session.Leaving is false)
        {
            return Next.Of((session with { Leaving = true }).Say($"unsaved: {unsaved}. v saves it; q again leaves it in the draft", Look.Watch));
        }

        return Next.Of(session with { Over = true });
    }
}
