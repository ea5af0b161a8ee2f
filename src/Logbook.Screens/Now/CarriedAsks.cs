using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What is asked of a carried item that was found otherwise, or that ends.</summary>
internal static class CarriedAsks
{
    public const string Inside = "inside";

    public static readonly IReadOnlyDictionary<string, string> NoFields = new Dictionary<string, string>(StringComparer.Ordinal);

    public static AskPage Changed(CarriedItem item) => item.ItemKind switch
    {
        "permit" => Count(item),
        "injury" => WhereNow(item),
        _ => Otherwise(item),
    };

    /// <summary>It takes the place of where they were said to be: two places in one line would send people to the wrong one.</summary>
    private static AskPage WhereNow(CarriedItem item) => AskPage.Words(
        $"{item.Text}: where are they now, and how? {(item.Fields.TryGetValue("now", out var before) ? $"{Say.Visible(before)} before" : "nothing is recorded yet")}", "a few words",
        (asking, text) => Looked(asking, item, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["now"] = text.Trim() }));

    private static AskPage Otherwise(CarriedItem item) => AskPage.Words(
        Different(item), "a few words",
        (asking, text) => HowFar(item) is { } field ? Next.Of(asking.Open(Choose(item, field, text))) : Looked(asking, item, text, NoFields));

    private static string Different(CarriedItem item) => $"{item.Text}: what is different?";

    /// <summary>The field that says in one of a few words how far it has come; null when its kind has none.</summary>
    public static string? HowFar(CarriedItem item) => item.ItemKind == "permit" ? null : item.Fields.Keys.FirstOrDefault(CarryKinds.Words.ContainsKey);

    private static PickPage Choose(CarriedItem item, string field, string changed) => new(
        $"{FirstLetter.Large(field)}? {Say.Visible(item.Fields[field])} before", [.. CarryKinds.Words[field].Select(w => (w, ""))], null, (picking, i, _) =>
        Looked(picking, item, changed, new Dictionary<string, string>(StringComparer.Ordinal) { [field] = CarryKinds.Words[field][i] }));

    /// <summary>Who is inside is a number of its own, and comes first: a permit is closed when it is none, and a number among the words counts nobody.</summary>
    private static AskPage Count(CarriedItem item) => new(
        $"{item.Text}: how many are inside now? {Before(item)}", "a number, as the attendant counts; empty when it was not counted", "", (asking, text, _) =>
        string.IsNullOrWhiteSpace(text) ? Next.Of(asking.Open(AskPage.Words($"{Different(item)} Not counted: {Before(item)}", "a few words", (told, changed) => Looked(told, item, changed, NoFields))))
        : CarriedItem.CountIn(text) is null ? Next.Of(asking.Say($"'{text.Trim()}': how many are inside begins with a number; what is different is asked next", Look.Watch))
        : Next.Of(asking.Open(new AskPage($"{Say.Visible(text.Trim())} inside. What else is different?", "may stay empty", "", (told, changed, _) =>
            Looked(told, item, string.IsNullOrWhiteSpace(changed) ? null : changed.Trim(), new Dictionary<string, string>(StringComparer.Ordinal) { [Inside] = text.Trim() })))));

    private static string Before(CarriedItem item) => item.Fields.TryGetValue(Inside, out var before) ? $"{Say.Visible(before)} before" : "nobody has counted yet";

    public static WhoPage Owner(Session session, CarriedItem item) => new(
        $"{Say.Kind(item.ItemKind)}, {Say.Equipment(session.Site, item.On)}: who owns it from now on? {(item.Owner is { } before ? $"{Say.Person(session.Site, before)} before" : "nobody is named yet")}", "", 0,
        (below, person) => Next.Of(below, new WriteIt(new ConfirmCarried(below.By!, item, new CarryConfirmed(item.Id, true, null, NoFields, null) { Owner = person.Code }))));

    /// <summary>What ends at a time may go on longer; of what somebody has to allow that is said with who does, by command.</summary>
    private static Next Looked(Session asking, CarriedItem item, string? changed, IReadOnlyDictionary<string, string> fields)
    {
        var look = new CarryConfirmed(item.Id, true, changed, fields, null);
        return item.Until is not { } end || item.ItemKind == "permit" || item.Fields.ContainsKey("allowed-by") ? Write(asking, item, look) : Next.Of(asking.Open(new AskPage(
            $"Until when? {Say.Time(asking.Site, end, asking.Clock)} before", $"{ClockText.Ahead(asking.Site, asking.Clock)}; empty keeps it", "", (told, text, setting) =>
            string.IsNullOrWhiteSpace(text) ? Write(told, item, look)
            : ClockText.ReadAhead(text, told.Site, setting.Now, out var mistake) is { } until ? Write(told, item, look with { Until = until })
            : Next.Of(told.Say(mistake)))));
    }

    /// <summary>What would stand against the count is read in full before the key that writes it.</summary>
    private static Next Write(Session asking, CarriedItem item, CarryConfirmed look) => CautionsPage.BeforeWriting(
        asking, YetRecorded.Before(asking.Site, asking.Facts.Equipment, asking.Facts.Now.Carried, look, asking.Clock),
        s => item.IsCountedOutBy(item.Told(look)) // also of the own count: a PIN that is typed from habit must not run into the next item
            ? Next.Of(s.Asked().Open(new SignPage(new CountOut(s.By!, item, look), Secret.Empty, null)))
            : Next.Of(s, new WriteIt(new ConfirmCarried(s.By!, item, look))));

    /// <summary>The own lock first: an isolation that is closed while it is recorded as on would leave it on the board with nothing that says so.</summary>
    public static Page Close(Session session, CarriedItem item) => !item.HasLockOf(session.By!) ? Ended(session, item, null) : new PickPage(
        $"{Say.Equipment(session.Site, item.On)}: your own lock is recorded as on. Is it off?", [("off", "it is off the board: the isolation ends"), ("still on", "the isolation stays open")], null, (picking, i, _) =>
        Next.Of(i == 0 ? picking.Open(Ended(picking, item, "off")) : picking.Back().Say("not closed: take your own lock off first", Look.Watch)));

    private static AskPage Ended(Session session, CarriedItem item, string? ownLock) => AskPage.Words(
        $"{(SignedWriting.PermitStands(session.Site, session.Facts.Now.Carried, item) is { } open ? $"{open}. " : "")}{item.Text}: how did it end?", item.IsHazard ? "a few words, then the PIN: it can hurt" : "a few words",
        (asking, why) => new CloseItem(asking.By!, item, new CarryClosed(item.Id, why) { Lock = ownLock }) is var close && item.IsHazard
            ? Next.Of(asking.Asked().Open(new SignPage(close, Secret.Empty, null)))
            : ReceiverKeys.Step(asking, close)) with { NoPin = true };
}
