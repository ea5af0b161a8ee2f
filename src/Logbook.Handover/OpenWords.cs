using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Records about what stays open, in plain words.</summary>
internal static class OpenWords
{
    public static string Of(Desk desk, JournalRecord record)
    {
        var site = desk.Site;
        string Time(DateTimeOffset at) => Say.Time(site, at, record.At);
        return record.Body switch
        {
            CarryConfirmed look => Look(desk, look),
            CarryClosed closed => $"Closed: {Item(desk, closed.Id)}{OwnLock(closed.Lock)}{Because(closed.Why)}{(closed.Signed is { } signed ? StepWords.By(site, signed) : "")}",
            OrderGiven order => $"Standing order: {Say.Visible(order.Text)}{(order.Until is { } end ? $", until {Time(end)}" : "")}",
            OrderSeen seen => $"Order read {Say.Ref(seen.Id)}",
            OrderWithdrawn withdrawn => $"Order WITHDRAWN{Order(desk, withdrawn.Id)} {Say.Ref(withdrawn.Id)}{Because(withdrawn.Why)}",
            DepartmentNote { Acknowledges: { } id } ack => $"Acknowledged {Say.Ref(id)} by {Say.Visible(ack.Name ?? "")}{Because(ack.Text)}",
            DepartmentNote note => $"To {Say.Visible(note.To ?? "")}: {Say.Visible(note.Text)}",
            UpsetDeclared { Ended: { } end } upset => $"Upset from {Time(upset.Began)} is over at {Time(end)}{Because(upset.Why)}",
            UpsetDeclared upset => $"Upset since {Time(upset.Began)}{Because(upset.Why)}",
            RosterChange change => Change(site, change, record.At),
            ClockJumped { Acknowledges: { } id } ack => $"Clock looked at {Say.Ref(id)}{Because(ack.Why)}",
            ClockJumped { Before: { } before, After: { } after } => $"The clock jumped back from {Say.Day(site, before)} to {Say.Day(site, after)}",
            FindingAnswered answer => $"Answer {Say.Ref(answer.Seq)}, finding {answer.Number}: {Say.Visible(answer.Text)}",
            _ => Say.Visible(record.Kind),
        };
    }

    private static string Order(Desk desk, long id) => desk.Store.Read(id).FirstOrDefault()?.Body is OrderGiven order ? $", \"{Say.Visible(order.Text)}\"" : "";

    /// <summary>What a look or a closing is about: <c>permit, Lime mud tank (#1088)</c>.</summary>
    private static string Item(Desk desk, long id)
    {
        var (kind, on) = desk.State.Carried.Find(i => i.Id == id) is { } open ? (open.ItemKind, open.On)
            : desk.Store.Read(id).FirstOrDefault()?.Body is Carry carry ? (carry.ItemKind, carry.On)
            : ("", "");
        return kind.Length == 0 ? Say.Ref(id) : $"{Say.Kind(kind)}, {Say.Equipment(desk.Site, on)} {Say.Ref(id)}";
    }

    private static string Look(Desk desk, CarryConfirmed look)
    {
        var found = look.Changed is { } changed ? $"Changed, {Say.Visible(changed)}" : look.OnlyNames ? "Owner named" : look.Fields.ContainsKey("inside") ? "Counted" : look.Seen ? "Still so" : "Not seen";
        return $"{found}: {Item(desk, look.Id)}{OwnLock(look.Lock)}{(look.Until is { } until ? $"; ends {Say.Day(desk.Site, until)}{Before(desk, look)}" : "")}{NewOwner(desk, look)}{string.Concat(look.Fields.Select(f => $"; {Say.Visible(f.Key)} {Say.Visible(f.Value)}"))}{(look.Signed is { } signed ? StepWords.By(desk.Site, signed) : "")}";
    }

    private static string NewOwner(Desk desk, CarryConfirmed look)
    {
        if (look.Owner is not { } owner)
        {
            return "";
        }

        var before = desk.Store.Read(look.Id).TakeWhile(r => r.Body != look)
            .Select(r => r.Body switch { Carry item when r.Seq == look.Id => item.Owner, CarryConfirmed other when other.Id == look.Id => other.Owner, _ => null }).LastOrDefault(o => o is not null);
        return $"; owner now {Say.Person(desk.Site, owner)}{(before is null ? "" : $", formerly {Say.Person(desk.Site, before)}")}";
    }

    /// <summary>The end that stood before this look: the record of the item, or of the look before it that moved it.</summary>
    private static string Before(Desk desk, CarryConfirmed look)
    {
        var records = desk.Store.Read(look.Id).TakeWhile(r => r.Body != look);
        var before = records.Select(r => r.Body switch { Carry item when r.Seq == look.Id => item.Until, CarryConfirmed other when other.Id == look.Id => other.Until, _ => null }).LastOrDefault(u => u is not null);
        return before is { } was && was != look.Until ? $", formerly {Say.Day(desk.Site, was)}" : "";
    }

    private static string Change(Site site, RosterChange change, DateTimeOffset near)
    {
        var what = change.What switch
        {
            "swap" => $"works instead of {Say.Person(site, change.For ?? "")}",
            "holdover" => "stays on",
            _ => "is off",
        };
        return $"Roster: {Say.Person(site, change.Person)} {what} from {Say.Time(site, change.From, near)} to {Say.Time(site, change.To, near)}{Because(change.Why)}";
    }

    private static string OwnLock(string? step) => step is null ? "" : $", own lock {Say.Visible(step)}";

    private static string Because(string? why) => string.IsNullOrWhiteSpace(why) ? "" : $": {Say.Visible(why)}";
}
