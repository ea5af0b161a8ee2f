using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What outlives the shift, looked at one by one: what can hurt in each shift, the rest in each week. Opened and closed here too.</summary>
/// <param name="Only">Ids of those that a round came to; null for all.</param>
internal sealed record CarriedPage(int Selected, IReadOnlyList<long>? Only = null) : Page
{
    internal static readonly KeyTable Table = new(
        Answer('1', "still so", "It was seen and is still so; Enter takes it."),
        Answer('2', "changed", "It was seen and is different; Enter asks how."),
        Answer('n', "not seen", "It was looked for in vain, or nobody went; Enter takes it."),
        KeyRow.Letter('k', "own lock", "Puts your own lock on the isolation, or takes it off: the incoming person's goes on first; Enter takes it.", (session, _) => Next.Of(session.Put(Of(session) with { Found = 'k' }))) with { WhyNot = WhyNotLock },
        KeyRow.Named("Enter", "take", "Takes the answer: a key that is pressed twice answers nothing else.", (session, _, _) => Take(session), KeyName.Enter) with { Applies = s => Of(s).Found is not null },
        KeyRow.Named("Enter", "open", "Opens the record that began it.", (session, _, _) => Next.Of(session, new ReadRecord(Item(session)!.Id)), KeyName.Enter) with { WhyNot = Nothing },
        KeyRow.Letter('x', "close", "Closes the item under the mark: how it ended, and the PIN where it can hurt.", (session, _) => Next.Of(session.Put(Of(session) with { Found = null }).Open(CarriedAsks.Close(session, Item(session)!)))) with { WhyNot = WhyNotClose },
        KeyRow.Letter('o', "owner", "Says who owns it from now on, when the one before is away; no lock moves by that.", (session, _) => Next.Of(session.Put(Of(session) with { Found = null }).Open(CarriedAsks.Owner(session, Item(session)!)))) with { WhyNot = WhyNot },
        KeyRow.Letter('a', "add", "Opens an item that is carried from shift to shift: kind, place, words, until when.", (session, _) => CarryForm.Open(session)) with { WhyNot = RecordAsks.NobodyTypes },
        KeyRow.Letter('e', "equipment", "Says what a piece of equipment does: running, stopped, in acid, out.", (session, _) => StateForm.Open(session)) with { WhyNot = RecordAsks.NobodyTypes },
        KeyRow.Letter(']', "related", "All that was said of it.", (session, _) => RelatedPage.Ask(session, Item(session)!.Id)) with { WhyNot = Nothing },
        KeyRow.Named("Up Down", "", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Of(session) with { Selected = Moving.Move(Of(session).Selected, key, Items(session, Of(session)).Count, session.Leaf), Found = null })), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Help);

    /// <summary>These items alone, the mark on the first of them that <paramref name="first"/> holds of.</summary>
    public static CarriedPage Of(Session session, IReadOnlyList<long> ids, Func<CarriedItem, bool> first)
    {
        var page = new CarriedPage(0, ids);
        return page with { Selected = Math.Max(0, Items(session, page).FindIndex(i => first(i))) };
    }

    /// <summary>How it was found: the key that chose it; null before one did.</summary>
    public char? Found { get; init; }

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session)
    {
        var items = Items(session, this);
        var lines = new List<Line>();
        var (from, to) = (0, 0);
        for (var i = 0; i < items.Count; i++)
        {
            var top = lines.Count;
            lines.AddRange(Gutter.Lines($"{(i == Selected ? "> " : "  ")}{(items[i].IsHazard ? "HURTS" : "open")}", items[i].IsHazard ? Look.Hurts : Look.Strong, Words(session, items[i]), session.Width, i == Selected ? int.MaxValue : 3, i == Selected ? Look.Chosen : Look.Plain));
            (from, to) = i == Selected ? (top, lines.Count - 1) : (from, to);
        }

        return new Layout(
            [Line.Of(Only is null ? " Carried: how was it found?" : " Carried here: how was it found?", Look.Strong), Line.Empty],
            lines.Count == 0 ? [Line.Of(Only is null ? "   nothing recorded as open" : "   nothing recorded as open here", Look.Faint)] : lines, from, to,
            Found is { } found ? [Line.Of($" {Chosen(session, items[Selected], found)} {Say.Ref(items[Selected].Id)}: Enter takes it, Up Down leaves it", Look.Strong)] : []);
    }

    /// <summary>The state with these facts: the mark and the answer stay with their item, whatever rows came and went. Of an item that is gone the answer goes too.</summary>
    public static Session Followed(Session session, Facts facts)
    {
        var after = session with { Facts = facts };
        var at = session.Pages.FindLastIndex(p => p is CarriedPage);
        if (at < 0 || session.Pages[at] is not CarriedPage page || Items(session, page).ElementAtOrDefault(page.Selected) is not { } item)
        {
            return after;
        }

        var items = Items(after, page);
        var row = items.FindIndex(i => i.Id == item.Id);
        var gone = page with { Selected = Math.Clamp(page.Selected, 0, Math.Max(0, items.Count - 1)), Found = null };
        after = after with { Pages = after.Pages.SetItem(at, row < 0 ? gone : page with { Selected = row }) };
        return row < 0 && page.Found is not null ? after.Say($"{Say.Ref(item.Id)} was closed meanwhile: your answer is dropped", Look.Watch) : after;
    }

    /// <summary>
    /// The state after a look was written: the mark goes on to the next item when that is due too, and jumps over none. In a round it goes
    /// to whatever is still due, and when nothing that the round came to is due any more the round goes on.
    /// </summary>
    public static Session Looked(Session session, long id)
    {
        if (session.Top is not CarriedPage page)
        {
            return session;
        }

        var items = Items(session, page);
        bool IsDue(CarriedItem item) => item.Id != id && OnTheWay.LookIsDue(session.Site, item, session.Clock);
        if (page.Only is null)
        {
            return session.Put(page with { Selected = items.ElementAtOrDefault(page.Selected + 1) is { } below && IsDue(below) ? page.Selected + 1 : page.Selected, Found = null });
        }

        var next = items.FindIndex(Math.Min(page.Selected, items.Count), IsDue) is >= 0 and var after ? after : items.FindIndex(IsDue);
        return next < 0 ? session.Back() : session.Put(page with { Selected = next, Found = null });
    }

    private static KeyRow Answer(char key, string word, string help) => KeyRow.Letter(key, word, help, (session, _) => Next.Of(session.Put(Of(session) with { Found = key }))) with { WhyNot = WhyNot };

    private static string Chosen(Session session, CarriedItem item, char found) =>
        found == 'k' ? $"your own lock goes {LockStep(session, item)}" : Table.Rows.First(r => r.Keys[0] == found).Word;

    private static string LockStep(Session session, CarriedItem item) => item.HasLockOf(session.By!) ? "off" : "on";

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
        var instead = item.Fields.TryGetValue("instead", out var other) ? $", instead {other}" : "";
        var far = CarriedAsks.HowFar(item) is { } field ? $", {item.Fields[field]}" : "";
        var inside = item.Fields.TryGetValue(CarriedAsks.Inside, out var counted) ? $", {counted} counted inside"
            : item.MayBeInside ? ", NOBODY COUNTED: people may be inside" : item.LetsNobodyIn ? ", no entry" : "";
        var seen = item.Confirmed is { } look ? $"{(look.Seen ? "seen" : "NOT SEEN")} {Say.Time(session.Site, look.At, session.Clock)} {Say.Person(session.Site, look.By)}" : null;
        // What a round saw of it is told in the words of what can hurt.
        var round = session.Facts.Now.Hazards.FirstOrDefault(h => h.Seq == item.Id)?.LastLook is { Length: > 0 } last ? last : null;
        var looked = seen is null && round is null ? "not looked at yet" : string.Join("; ", new[] { seen, round }.OfType<string>());
        var due = OnTheWay.LookIsDue(session.Site, item, session.Clock) ? ", a look is due" : "";
        var owner = item is { ItemKind: "permit" or "isolation", Owner: { } code } ? $", owner {Say.Person(session.Site, code)}" : "";
        var locks = string.Concat(LocksOn.Words(session.Site, item).Append(LocksOn.Missing(session.Facts.Now.Carried, item)).OfType<string>().Select(words => $", {words}"));
        return $"{Say.Kind(item.ItemKind)}, {Say.Equipment(session.Site, item.On)}: {item.Text}{far}{instead}{until}{inside}{owner}{locks}; {looked}{due} {Say.Ref(item.Id)}";
    }

    private static string? Nothing(Session session) => Item(session) is null ? "nothing is open" : null;

    private static string? WhyNot(Session session) => Nothing(session) ?? RecordAsks.NobodyTypes(session);

    /// <summary>Said at once: nobody writes how it ended and is refused behind the PIN.</summary>
    private static string? WhyNotClose(Session session) => WhyNot(session)
        ?? (SignedWriting.CountedInside(Item(session)!) is { } inside ? $"{Say.Visible(inside)} counted inside: it stays open until 2 has counted all out"
            : SignedWriting.LocksForPeople(session.Site, session.Facts.Now.Carried, Item(session)!) is { } locks ? InKeys.Of(locks)
            : Item(session)!.LocksBeside(session.By!) is { IsEmpty: false } others ? $"locks of {string.Join(", ", others.Select(code => Say.Person(session.Site, code)))} are recorded as on; each takes off their own by k"
            : null);

    /// <summary>Said at once, like the order of the locks: the incoming person's is on before the outgoing person's comes off.</summary>
    private static string? WhyNotLock(Session session) => WhyNot(session) ?? (Item(session) is not { ItemKind: "isolation" } item ? "locks hang on an isolation"
        : CarriedCheck.LockOrder(session.Site, item, LockStep(session, item), session.By!).Select(m => InKeys.Of($"{m.Wrong}; {m.Accepted}")).FirstOrDefault());

    private static Next Take(Session session)
    {
        var (item, found) = (Item(session)!, Of(session).Found);
        var look = new CarryConfirmed(item.Id, found != 'n', null, CarriedAsks.NoFields, found == 'k' ? LockStep(session, item) : null);
        return found == '2' ? Next.Of(session.Open(CarriedAsks.Changed(item)))
            : CautionsPage.BeforeWriting(session, LocksOn.OnLockOff(session.Site, session.Facts.Now.Carried, item, look, session.By!) is { } left ? $"{Say.Equipment(session.Site, item.On)}: {left}." : null,
                s => Next.Of(s, new WriteIt(new ConfirmCarried(s.By!, item, look))));
    }
}
