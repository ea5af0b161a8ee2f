using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>Standing orders, read one by one, and notes to other departments that nobody there has acknowledged yet.</summary>
internal sealed record OrdersPage(int Selected) : Page
{
    internal static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "I have read it", "Says of the order under the mark that you have read it.", (session, _, _) => Answer(session), KeyName.Enter) with { Applies = s => Note(s) is null, WhyNot = WhyNot },
        KeyRow.Named("Enter", "acknowledged", "Of the note under the mark: who of the department has acknowledged it, and what they said.", (session, _, _) => Answer(session), KeyName.Enter) with { WhyNot = WhyNot },
        KeyRow.Letter('x', "withdraw", "Ends the order under the mark: says why; whoever had read it is shown that it holds no longer.", (session, _) => Next.Of(session.Open(Withdraw(Order(session)!)))) with { WhyNot = WhyNotWithdraw },
        KeyRow.Letter('t', "tell", "A note to another department.", (session, _) => Next.Of(session.Open(To()))) with { WhyNot = RecordAsks.NobodyTypes },
        KeyRow.Letter(']', "related", "All that was said of it.", (session, _) => RelatedPage.Ask(session, Id(session))) with { WhyNot = s => Count(s) == 0 ? "nothing stands here" : null },
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(new OrdersPage(Moving.Move(At(session), key, Count(session), session.Leaf)))), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var (lines, from, to) = (new List<Line>(), 0, 0);
        void Add(int row, string word, Look look, string text)
        {
            var top = lines.Count;
            lines.AddRange(Gutter.Lines((row == Selected ? "> " : "  ") + word, look, text, session.Width, rest: row == Selected ? Look.Chosen : Look.Plain));
            (from, to) = row == Selected ? (top, lines.Count - 1) : (from, to);
        }

        var orders = All(session);
        for (var i = 0; i < orders.Count; i++)
        {
            if (orders[i].Withdrawn is { } end)
            {
                Add(i, "ended", Look.Watch, $"WITHDRAWN {Say.Time(session.Site, end.At, session.Clock)} {Say.Person(session.Site, end.By)}: {Say.Visible(end.Why)}; was: {orders[i].Text}; you had read it {Say.Ref(end.Seq)}");
                continue;
            }

            var read = session.By is { } by && orders[i].Seen.TryGetValue(by, out var at) ? $"read by you {Say.Time(session.Site, at, session.Clock)}" : "NOT read by you";
            Add(i, "order", Look.Strong, $"{orders[i].Text}; {Say.Person(session.Site, orders[i].By)} {Say.Time(session.Site, orders[i].Since, session.Clock)}; {read} {Say.Ref(orders[i].Id)}");
        }

        for (var i = 0; i < session.Facts.Departments.Count; i++)
        {
            var note = session.Facts.Departments[i];
            Add(orders.Count + i, "told", Look.Watch, $"to {note.To}: {note.Text}; {Say.Person(session.Site, note.By)} {Say.Time(session.Site, note.At, session.Clock)}; nobody there has acknowledged it {Say.Ref(note.Id)}");
        }

        return new Layout([Line.Of(" Standing orders, and notes to other departments", Look.Strong), Line.Empty], lines.Count == 0 ? [Line.Of("   none stands", Look.Faint)] : lines, from, to, []);
    }

    private static int At(Session session) => ((OrdersPage)session.Top).Selected;

    /// <summary>Those that stand, then those that the one who types had read and not yet that they were withdrawn.</summary>
    private static List<StandingOrder> All(Session session) => [.. session.Facts.Now.Orders, .. session.Facts.Now.Withdrawn.Where(o => session.By is { } by && o.EndIsNewTo(by))];

    private static int Count(Session session) => All(session).Count + session.Facts.Departments.Count;

    private static StandingOrder? Order(Session session) => All(session).ElementAtOrDefault(At(session));

    private static OpenDepartmentNote? Note(Session session) => session.Facts.Departments.ElementAtOrDefault(At(session) - All(session).Count);

    private static long Id(Session session) => Order(session)?.Id ?? Note(session)!.Id;

    private static string? WhyNot(Session session) => RecordAsks.NobodyTypes(session)
        ?? (Order(session) is { } order ? order.Withdrawn is null && order.Seen.ContainsKey(session.By!) ? "you have read it already" : null : Note(session) is null ? "nothing stands here" : null);

    private static Next Answer(Session session) => Order(session) is { } order
        ? Next.Of(session, new WriteIt(new ReadOrder(session.By!, order.Id)))
        : Next.Of(session.Open(TakenBy(Note(session)!)));

    private static string? WhyNotWithdraw(Session session) => RecordAsks.NobodyTypes(session) ?? (Order(session) is not { } order ? "the mark is on no order" : order.Withdrawn is not null ? "it is withdrawn already" : Writing.NotTheirs(session.Site, order, session.By!)?.ToString());

    private static AskPage Withdraw(StandingOrder order) => AskPage.Words($"{order.Text}: why does it hold no longer?", "a few words; it stays in the log", (asking, why) => Next.Of(asking, new WriteIt(new WithdrawOrder(asking.By!, order.Id, why))));

    private static AskPage TakenBy(OpenDepartmentNote note) => AskPage.Words($"Who of {note.To} has acknowledged it?", "the name", (asking, name) => Next.Of(asking.Open(new AskPage(
        "What did they say?", "may stay empty", "", (saying, text, _) => Next.Of(saying, new WriteIt(new NoteTaken(saying.By!, note.Id, name, text)))))));

    private static AskPage To() => AskPage.Words("Which department?", "recovery boiler, lime kiln, laboratory, maintenance ...", (asking, to) => Next.Of(asking.Open(
        AskPage.Words($"What is {to} told?", "a few words; who acknowledges it is written down when it is known", (telling, text) => Next.Of(telling, new WriteIt(new TellDepartment(telling.By!, to, text)))))));
}
