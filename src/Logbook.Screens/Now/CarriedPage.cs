using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What outlives the shift, looked at one by one with a digit: what can hurt in each shift, the rest in each week.</summary>
/// <param name="Only">Ids of those that a round came to; null for all.</param>
internal sealed record CarriedPage(int Selected, IReadOnlyList<long>? Only = null) : Page
{
    private static readonly Dictionary<string, string> NoFields = [];

    private static readonly KeyTable Table = new(
        KeyRow.Letter('1', "still so", "It was seen and is still so.", (session, _) => Look(session, seen: true)) with { WhyNot = WhyNot },
        KeyRow.Letter('2', "changed", "It was seen and is different: how.", (session, _) => Next.Of(session.Open(Changed(Item(session)!)))) with { WhyNot = WhyNot },
        KeyRow.Letter('n', "not seen", "It was looked for in vain, or nobody went.", (session, _) => Look(session, seen: false)) with { WhyNot = WhyNot },
        KeyRow.Named("Enter", "record", "Opens the record that opened it.", (session, _, _) => Next.Of(session, new ReadRecord(Item(session)!.Id)), KeyName.Enter) with { WhyNot = s => Item(s) is null ? "nothing is open" : null },
        KeyRow.Letter(']', "related", "All that was said of it.", (session, _) => Next.Of(session, new ReadRelated(Item(session)!.Id))) with { WhyNot = s => Item(s) is null ? "nothing is open" : null },
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Of(session) with { Selected = Moving.Move(Of(session).Selected, key, Items(session, Of(session)).Count, session.Leaf) })), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var items = Items(session, this);
        var lines = new List<Line>();
        var (from, to) = (0, 0);
        for (var i = 0; i < items.Count; i++)
        {
            var top = lines.Count;
            lines.AddRange(Gutter.Lines($"{(i == Selected ? "> " : "  ")}{(items[i].IsHazard ? "HURTS" : "open")}", items[i].IsHazard ? Screens.Look.Hurts : Screens.Look.Strong, Words(session, items[i]), session.Width, 3, i == Selected ? Screens.Look.Chosen : Screens.Look.Plain));
            (from, to) = i == Selected ? (top, lines.Count - 1) : (from, to);
        }

        return new Layout(
            [Line.Of(Only is null ? " Carried: how was it found?" : " Carried here: how was it found?", Screens.Look.Strong), Line.Empty],
            lines.Count == 0 ? [Line.Of(Only is null ? "   nothing recorded as open" : "   nothing recorded as open here", Screens.Look.Faint)] : lines, from, to, []);
    }

    /// <summary>The state after a look was written: when nothing that the round came to is due any more, the round goes on.</summary>
    public static Session Looked(Session session, long id) =>
        session.Top is CarriedPage { Only: not null } page && !Items(session, page).Exists(i => i.Id != id && OnTheWay.LookIsDue(session.Site, i, session.Clock)) ? session.Back() : session;

    private static CarriedPage Of(Session session) => (CarriedPage)session.Top;

    /// <summary>What can hurt first, then the oldest.</summary>
    private static List<CarriedItem> Items(Session session, CarriedPage page) => 
    [
        .. session.Facts.Now.Carried.Where(c => page.Only?.Contains(c.Id) ?? true).OrderByDescending(c => c.IsHazard).ThenBy(c => c.Since),
    ];

    private static CarriedItem? Item(Session session) => Items(session, Of(session)).ElementAtOrDefault(Of(session).Selected);

    private static string Words(Session session, CarriedItem item)
    {
        var until = item.Until is { } end ? $", {(end < session.Clock ? "was due" : "until")} {Say.Time(session.Site, end, session.Clock)}" : "";
        var seen = item.Confirmed is { } look ? $"{(look.Seen ? "seen" : "NOT SEEN")} {Say.Time(session.Site, look.At, session.Clock)} {Say.Person(session.Site, look.By)}" : "not looked at yet";
        return $"{item.ItemKind.Replace('-', ' ')}, {Say.Equipment(session.Site, item.On)}: {item.Text}{until}; {seen} {Say.Ref(item.Id)}";
    }

    private static string? WhyNot(Session session) => Item(session) is null ? "nothing is open" : RecordAsks.NobodyTypes(session);

    private static Next Look(Session session, bool seen) => Next.Of(session, new WriteIt(new ConfirmCarried(session.By!, new CarryConfirmed(Item(session)!.Id, seen, null, NoFields, null))));

    private static AskPage Changed(CarriedItem item) => new(
        $"{item.Text}: what is different?", "a few words", "",
        (asking, text, _) => Next.Of(asking, new WriteIt(new ConfirmCarried(asking.By!, new CarryConfirmed(item.Id, true, text, NoFields, null)))));
}
