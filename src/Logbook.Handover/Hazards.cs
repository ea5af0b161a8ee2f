using System.Collections.Immutable;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// What can hurt, each in full: open hazards, equipment in acid, gas above its limits, and safety points that were seen
/// bad. A line says what is recorded, by whom and when; the lock board and the permit office know what is true.
/// </summary>
internal static class Hazards
{
    /// <summary>The words in the order in which they must be read.</summary>
    public static readonly IReadOnlyList<string> Words = ["gas", "inside", "permit", "locked", "defeated", "out", "acid", "injury", "release", "seen"];

    // After this long a count of people inside says nothing any more, nor does where somebody who is hurt was.
    private static readonly TimeSpan CountHolds = TimeSpan.FromHours(1);

    public static IReadOnlyList<HazardLine> Of(Site site, State state, DateTimeOffset now) => Of(site, state, now, ImmutableDictionary<long, IReadOnlyList<DueCheck>>.Empty, GasBegun.None);

    /// <param name="notOnTime">Checks instead of defeated trips that were missed or late: see <see cref="InsteadOfTrips.NotOnTime"/>.</param>
    /// <param name="begun">Since when gas is that stands.</param>
    public static IReadOnlyList<HazardLine> Of(
        Site site, State state, DateTimeOffset now, IReadOnlyDictionary<long, IReadOnlyList<DueCheck>> notOnTime, IReadOnlyDictionary<string, GasBegun> begun)
    {
        var seen = state.Findings.Values.SelectMany(f => f).OrderBy(f => f.Seq).ThenBy(f => f.Number).Select(f => (Finding: f, Line: Seen(site, f, now, begun))).Where(s => s.Line is not null).ToList();
        seen = [.. seen.Select(s => s with { Line = s.Line! with { Findings = [s.Finding, .. state.Findings[s.Finding.Finding.Point!].Where(j => j.Seq == s.Finding.Seq && j.Finding.Code == "step")] } })];
        // What was seen of an open item, and that its equipment is in acid, stand beside it: one fact is one line.
        var acid = state.Equipment.Values.Where(e => e.State == "acid").ToList();
        var items = state.Carried.Where(i => i.IsHazard).Select(i => (
            Item: i,
            Seen: seen.Where(s => s.Line!.Word == "seen" && site.FindPoint(s.Finding.Finding.Point!) is { } p && IsOf(site, i, p)).ToList(),
            Acid: acid.Where(e => i.ItemKind == "wash" && e.Equipment.Equals(i.On, StringComparison.OrdinalIgnoreCase)).ToList())).ToList();
        return
        [
            .. items.Select(x => Open(site, state, x.Item, now, notOnTime, begun, [.. x.Seen.Select(s => s.Finding.At)]).With(
                    [.. x.Acid.Select(e => ($"In acid since {AcidSince(site, e, now)} {By(site, e)}", $"In acid since {AcidSince(site, e, now)}"))],
                    string.Join(' ', x.Seen.Select(s => LastLook(site, s.Finding, now))), [.. x.Seen.Select(s => s.Finding)]))
                .Concat(acid.Except(items.SelectMany(x => x.Acid)).Select(e => Acid(site, state, e, now)))
                .Concat(seen.Except(items.SelectMany(x => x.Seen)).Select(s => s.Line!))
                .OrderBy(h => Words.ToList().IndexOf(h.Word)).ThenBy(h => h.Since).ThenBy(h => h.Seq),
        ];
    }

    /// <summary>
    /// True when a safety point is the thing that an item says is out or defeated: the item names the point, or lies at the point's
    /// equipment or area and shares a word of its description. A trip often lies where its sensor does and is bridged at what it
    /// stops: there what is read by hand instead lies in the point's area, and the item's words name all of it.
    /// </summary>
    internal static bool IsOf(Site site, CarriedItem item, Point point)
    {
        if (item.ItemKind is not ("safety-equipment" or "bypass"))
        {
            return false;
        }

        bool Lies(string? where) => item.On.Equals(where, StringComparison.OrdinalIgnoreCase);
        // A trip is never the equipment itself: the guard of the screw whose trip is bridged is another thing.
        var place = item.ItemKind == "bypass" ? $"{point.Area} {Say.Equipment(site, item.On)}" : point.Area;
        var named = LongWords(point.Description).Except(LongWords(place), StringComparer.OrdinalIgnoreCase).ToList();
        var shared = named.Intersect(LongWords($"{item.Text} {Say.Equipment(site, item.On)}"), StringComparer.OrdinalIgnoreCase).ToList();
        // Where several are, that it is a trip does not tell which: another word must.
        var which = item.ItemKind == "bypass" && named.Except(AnyTrip, StringComparer.OrdinalIgnoreCase).Any() ? shared.Except(AnyTrip, StringComparer.OrdinalIgnoreCase) : shared;
        var instead = item.Fields.GetValueOrDefault("point");
        return point.Tag.Equals(instead, StringComparison.OrdinalIgnoreCase)
            || ((Lies(point.Equipment) || Lies(point.Area)) && which.Any())
            || (shared.Count > 1 && shared.Count == named.Count && site.FindPoint(instead ?? "") is { } byHand && byHand.Area == point.Area);
    }

    private static readonly string[] AnyTrip = ["trip", "interlock"];

    // Shorter ones ("the", "low", "out") say nothing of which thing is meant, nor does the name of the place where both are.
    private static IEnumerable<string> LongWords(string text) =>
        string.Concat(text.Select(c => char.IsLetter(c) ? c : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(w => w.Length >= 4);

    /// <summary>True when someone is recorded inside equipment: a count of none is a permit of which nobody is.</summary>
    public static bool SomeoneInside(CarriedItem item) => SignedWriting.CountedInside(item) is not null;

    /// <param name="seen">When rounds saw the thing bad, which is a look at it too.</param>
    private static HazardLine Open(Site site, State state, CarriedItem item, DateTimeOffset now, IReadOnlyDictionary<long, IReadOnlyList<DueCheck>> notOnTime, IReadOnlyDictionary<string, GasBegun> begun, DateTimeOffset[] seen)
    {
        var (word, _) = InWords(site, state, item, now, brief: false);
        var looked = item with { LastSeen = seen.Append(item.LastSeen).Max() };
        var against = (YetRecorded.Beside(site, state.Equipment, state.Carried, item, now) is { } yet ? " " + yet : "") + (item.ItemKind == "wash" ? YetRecorded.InAcidBeside(site, state.Carried, item.On) + SinceWashing(site, state, item, now) : "") + (LocksOn.Missing(state.Carried, item) is { } unlocked ? $" {unlocked}." : "") + Gas(site, state, item, now, begun) + OwnerHurt(site, state, item);
        string Text(bool brief) => InWords(site, state, item, now, brief).Text + against + DefeatedTrip.NotOnTime(site, item, notOnTime, now) + ReadInOrder(site, state, item, now) + ReadAgainstPeople(site, state, item, now);
        return new HazardLine(word, $"{Text(brief: false)} {Carried.Opened(site, looked, now)}", item.Since, item.Id)
        {
            Brief = Text(brief: true), OnPage = $"{Text(brief: false)} {Carried.Looked(site, looked, now)}{Say.Ref(item.Id)}", Name = Name(site, item),
        };
    }

    /// <summary>What the equipment of a wash was recorded as since, when that is no acid any more and contradicts nothing: rinsed, drained.</summary>
    private static string SinceWashing(Site site, State state, CarriedItem item, DateTimeOffset now) =>
        state.Equipment.GetValueOrDefault(item.On) is { State: not "acid" } status && status.Seq > item.Id && !EquipmentHistory.Runs(status.State)
            ? $" Recorded as {Say.Visible(status.State)} since {Say.Time(site, status.Since, now)}{(string.IsNullOrWhiteSpace(status.Why) ? "" : ", " + Say.Visible(status.Why))} {Say.Ref(status.Seq)}." : "";

    /// <summary>Who is hurt and away holds no permit and keeps no lock: somebody has to by name.</summary>
    private static string OwnerHurt(Site site, State state, CarriedItem item) =>
        (state.Carried.Find(i => i.HurtOwnerOf(item))?.Id ?? item.OwnerHurt) is { } hurt
            ? $" {Say.Person(site, item.Owner ?? item.By)}, WHOSE IT IS, IS RECORDED AS HURT {Say.Ref(hurt)}: who holds it now?" : "";

    /// <summary>Gas that was read and is there still, whoever was counted inside before.</summary>
    private static string Gas(Site site, State state, CarriedItem item, DateTimeOffset now, IReadOnlyDictionary<string, GasBegun> begun) => !item.MayBeInside ? "" : GasThatStands(site, state, now, begun) + string.Concat(
        from open in state.Unanswered
        let point = site.FindPoint(open.Finding.Point ?? "")
        where point is not null && !state.Findings.GetValueOrDefault(point.Tag, []).Exists(f => f.Seq == open.Seq) && WordOf(point, open.Finding) == "gas"
        select $" There was GAS: {Say.Visible(point.Description)} {Say.Time(site, open.At, now)}, and nobody has said why or who was told ({open.Seq}.{open.Number}).");

    private static string GasThatStands(Site site, State state, DateTimeOffset now, IReadOnlyDictionary<string, GasBegun> begun) => string.Concat(
        from found in state.Findings.Values.SelectMany(f => f).OrderBy(f => f.Seq)
        let point = site.FindPoint(found.Finding.Point ?? "")
        where point is not null && WordOf(point, found.Finding) == "gas"
        let first = begun.GetValueOrDefault(point.Tag)
        let urgent = found.Finding.Level == Level.Urgent
        select $" GAS: {Say.Visible(point.Description)} since {Say.Time(site, first?.At ?? found.At, now)}{(urgent ? ", URGENT" : first is { Urgent: true } ? ", URGENT before" : "")} {Say.Ref(first?.Seq ?? found.Seq, found.Seq)}; "
            + (urgent ? $"{LimitWords.Ask(point, high: true, Level.Urgent)}." : "an entry goes by the site's gas procedure."));

    /// <summary>True for a state of which nothing is to be said.</summary>
    internal static bool IsInOrder(Point point, double? value) => point.Choices.Any(c => c.Digit == value && c.Level is null);

    /// <summary>A round read the thing as it should be, while the item says that it is out or defeated.</summary>
    private static string ReadInOrder(Site site, State state, CarriedItem item, DateTimeOffset now) => string.Concat(
        from point in site.Points
        where point.Choices.Count > 0 && IsOf(site, item, point)
        let read = state.Latest.GetValueOrDefault(point.Tag)
        where read is not null && read.At > item.Since && IsInOrder(point, read.Value)
        select $" YET READ AS {Say.Value(point, read.Value!.Value, read.Unit)}, {point.Tag} at {Say.Time(site, read.At, now)} {Say.Person(site, read.By)} {Say.Ref(read.Seq)}: one of the two is not true; treat it as {(item.ItemKind == "bypass" ? "defeated" : "out")} until somebody has looked.");

    // What a vessel with people in it does not show: a level at which it works, a rake that turns. Common practice, no source.
    private static bool AgainstPeople(Point point, double value) =>
        (point.Description.Contains("level", StringComparison.OrdinalIgnoreCase) && value > (point.Limits.UrgentLow ?? point.Limits.WatchLow ?? 0))
        || (point.Description.Contains("torque", StringComparison.OrdinalIgnoreCase) && value > 0);

    /// <summary>Somebody may be inside equipment that was read since as full, or as turning.</summary>
    private static string ReadAgainstPeople(Site site, State state, CarriedItem item, DateTimeOffset now) => item is not { ItemKind: "permit", MayBeInside: true } ? "" : string.Concat(
        from point in site.Points
        where point.Kind == PointKind.Read && item.On.Equals(point.Equipment, StringComparison.OrdinalIgnoreCase)
        let read = state.Latest.GetValueOrDefault(point.Tag)
        where read is { Value: { } value } && read.At > item.Since && AgainstPeople(point, value)
        select $" YET READ: {Say.Visible(point.Description)} ({point.Tag}) {Say.Value(point, read.Value!.Value, read.Unit)} at {Say.Time(site, read.At, now)} {Say.Person(site, read.By)} {Say.Ref(read.Seq)}: one of the two is not true; go by the attendant and the lock board at once.");

    /// <summary>The place, and where the place is not the thing itself its first words: a gas monitor that is out, which trip is off.</summary>
    internal static string Name(Site site, CarriedItem item)
    {
        var place = Say.Equipment(site, item.On);
        var thing = Say.Visible(item.Text.Split(',', ';', '.')[0].Trim());
        // An eyewash that says "eyewash runs weak" is named already; the name of the area does not name it.
        var named = item.ItemKind != "bypass" && LongWords(place).Intersect(LongWords(thing), StringComparer.OrdinalIgnoreCase)
            .Except(LongWords(site.FindEquipment(item.On)?.Area ?? item.On), StringComparer.OrdinalIgnoreCase).Any();
        return item.ItemKind is "safety-equipment" or "bypass" && !named ? $"{place}, {thing}" : place;
    }

    /// <param name="brief">Without whose it is and who said so: what it is, until when and what to do instead always stand.</param>
    private static (string Word, string Text) InWords(Site site, State state, CarriedItem item, DateTimeOffset now, bool brief)
    {
        var place = Say.Equipment(site, item.On);
        string Rest(params string[] without) => Carried.Rest(site, item, now, brief, without);
        return item.ItemKind switch
        {
            "permit" when SomeoneInside(item) => ("inside", $"{place}: {Rest("inside", "entry")}. {Count(site, item, now, brief)}{Unsaid(item)}{Lockout(state, item)}{CountAgain(state, item)}"),
            "permit" => ("permit", $"{place}: {Rest("inside", "entry")}.{Lockout(state, item)} {Nobody(site, item, now, brief)}{(item.MayBeInside ? Unsaid(item) : "")}"),
            "isolation" => ("locked", $"{place}, DO NOT START: {Rest()}.{Locks(site, item)} Verify at the lock board."),
            "bypass" => ("defeated", $"{place}: {Rest(["point", .. DefeatedTrip.AllowedBy])}.{DefeatedTrip.Allowed(site, state, item)}{Instead(item)}{DefeatedTrip.LastRead(site, state, item, now)}"),
            "safety-equipment" => ("out", $"{place}: {Rest()}.{Instead(item)}{AlsoOut(site, state, item)}"),
            "injury" => ("injury", $"{Say.Person(site, item.Fields.GetValueOrDefault("who") ?? "somebody")}, {place}: {Rest("who")}.{WhereNow(site, item, now)} {InjuryWords.FirstAid}"),
            "release" => ("release", $"{place}: {Rest()}. Keep people and acid away from it; the site's procedure rules."),
            _ => ("acid", $"{place}: {(item.Fields.GetValueOrDefault("acid") is "yes" ? Rest("acid") : Rest())}."),
        };
    }

    /// <summary>Where somebody who is hurt was said to be: after a while it tells no longer where they are.</summary>
    private static string WhereNow(Site site, CarriedItem injury, DateTimeOffset now)
    {
        var at = injury.FieldsSet.GetValueOrDefault("now")?.At ?? injury.Since;
        return !injury.Fields.ContainsKey("now") ? " Nothing is recorded of where they are now."
            : now - at > CountHolds ? $" That was told at {Say.Time(site, at, now)}: ask where they are now." : "";
    }

    /// <summary>A permit of which nobody is counted inside: who says so, or that nobody counted.</summary>
    private static string Nobody(Site site, CarriedItem item, DateTimeOffset now, bool brief) =>
        item.Fields.ContainsKey("inside") ? $"{Count(site, item, now, brief)} Ask the attendant before you go by it."
        : item.LetsNobodyIn ? "By its words nobody goes in."
        : "Nothing is recorded of who is inside; ask the attendant.";

    // What an entry permit is nothing without. Common practice, no source.
    private static readonly (string Field, string Words)[] OfAnEntry = [("attendant", "attendant"), ("gas-test", "gas test")];

    /// <summary>What nobody has said of an entry: to leave it out would read as if it were there.</summary>
    private static string Unsaid(CarriedItem permit) =>
        OfAnEntry.Where(f => !permit.Fields.ContainsKey(f.Field) && !permit.Fields.Values.Append(permit.Text).Any(words => words.Contains(f.Words, StringComparison.OrdinalIgnoreCase))).Select(f => f.Words).ToList() is { Count: > 0 } unsaid
            ? $" Not recorded: {string.Join(", ", unsaid)}." : "";

    /// <summary>Whoever takes the line over counts; it need not be asked again of the one who has, soon after.</summary>
    private static string CountAgain(State state, CarriedItem permit) =>
        permit.FieldsSet.GetValueOrDefault("inside") is { } count && state.Line.Holder is { } holder && count.Seq > holder.Seq && Handed.Same(count.By, holder.Code) && count.At - holder.Since <= CountHolds
            ? "" : " Count again with the attendant at takeover.";

    private static string Count(Site site, CarriedItem item, DateTimeOffset now, bool brief)
    {
        var (at, by) = item.FieldsSet.GetValueOrDefault("inside") is { } set ? (set.At, set.By) : (item.Since, item.By);
        var counted = $"Counted {Say.Visible(item.Fields["inside"])} at {Say.Time(site, at, now)}{(brief ? "" : $", told by {Say.Person(site, by)}")}{Before(site, item, by, now)}.";
        return now - at <= CountHolds ? counted
            : counted + (SomeoneInside(item) ? " That is over an hour ago: count unknown, treat as inside." : " That is over an hour ago: somebody may have gone in since.");
    }

    /// <summary>Who tells of other people inside takes the place of no count: that of who counted stands beside it.</summary>
    private static string Before(Site site, CarriedItem permit, string by, DateTimeOffset now) => permit.Count is not { } count || Handed.Same(count.By, by) ? ""
        : $"; {Say.Person(site, count.By)} counted {Say.Visible(count.Inside)} at {Say.Time(site, count.At, now)}";

    private static string Lockout(State state, CarriedItem permit) =>
        permit.LockoutClosed is { } seq && !state.Carried.Exists(permit.StandsOn) ? $" NO LOCKOUT STANDS FOR IT ANY MORE: it was closed {Say.Ref(seq)}." : "";

    private static string Locks(Site site, CarriedItem item) =>
        string.Concat(LocksOn.Words(site, item).Select(words => $" {char.ToUpperInvariant(words[0])}{words[1..]}."));

    private static string Instead(CarriedItem item) =>
        item.Fields.ContainsKey("instead") ? "" : " Nothing is recorded of what to do instead.";

    /// <summary>Two eyewashes that are out must not send people to each other.</summary>
    private static string AlsoOut(Site site, State state, CarriedItem item) =>
        state.Carried.Where(i => i.ItemKind == "safety-equipment" && i.Id != item.Id).Select(i => Say.Equipment(site, i.On)).Distinct(StringComparer.Ordinal).ToList() is { Count: > 0 } others
            ? $" ALSO OUT: {string.Join("; ", others)}; nobody is sent there instead."
            : "";

    private static HazardLine Acid(Site site, State state, EquipmentStatus status, DateTimeOffset now)
    {
        var text = $"{Say.Equipment(site, status.Equipment)}: in acid since {AcidSince(site, status, now)}{YetRecorded.InAcidBeside(site, state.Carried, status.Equipment)}";
        return new HazardLine("acid", $"{text} {By(site, status)}", status.Since, status.Seq) { Brief = text };
    }

    private static string AcidSince(Site site, EquipmentStatus status, DateTimeOffset now) =>
        $"{Say.Time(site, status.Since, now)}{(string.IsNullOrWhiteSpace(status.Why) ? "" : ", " + Say.Visible(status.Why))}.";

    private static string By(Site site, EquipmentStatus status) => $"{Say.Person(site, status.By)} {Say.Ref(status.Seq)}";

    /// <summary>What was seen of a thing that is named already.</summary>
    private static string LastLook(Site site, OpenFinding open, DateTimeOffset now)
    {
        var name = site.FindPoint(open.Finding.Point!)!.Description + ":";
        var text = open.Finding.Text;
        return $"Last look: {Say.Sentence(text.StartsWith(name, StringComparison.OrdinalIgnoreCase) ? text[name.Length..].TrimStart() : text)} Read {Say.Time(site, open.At, now)} {Say.Ref(open.Seq)}{Done(site, open)}";
    }

    /// <summary>What was done about it stands beside it, as it does beside any finding.</summary>
    private static string Done(Site site, OpenFinding open) =>
        open.Answer is { } answer ? $" Answered, {Say.Person(site, answer.By)}: {Say.Sentence(answer.Text)} {Say.Ref(answer.Seq)}" : "";

    /// <summary>Gas from the watch limit on; a look-and-listen safety point (eyewash, trip, hatch, guard) when it was seen urgent.</summary>
    private static HazardLine? Seen(Site site, OpenFinding open, DateTimeOffset now, IReadOnlyDictionary<string, GasBegun> begun)
    {
        if (open.Finding.Point is not { } tag || site.FindPoint(tag) is not { } point || WordOf(point, open.Finding) is not { } word)
        {
            return null;
        }

        var first = word == "gas" ? begun.GetValueOrDefault(tag) : null;
        var since = first is null ? "" : $"; beyond its limits since {Say.Time(site, first.At, now)} {Say.Ref(first.Seq)}{(first.Urgent && open.Finding.Level < Level.Urgent ? ", URGENT before" : "")}.";
        var text = open.Finding.Text.Contains(point.Description, StringComparison.OrdinalIgnoreCase) ? open.Finding.Text : $"{point.Description}: {open.Finding.Text}";
        return new HazardLine(word, $"{Say.Sentence(text)} Read {Say.Time(site, open.At, now)} {Say.Ref(open.Seq)}{since}{Done(site, open)}", first?.At ?? open.At, open.Seq) { Findings = [open] };
    }

    /// <summary>The word for a finding that can hurt by itself; null for any other. How far gas jumped hurts nobody where it is within its limits now, and says nothing beside a limit that it broke.</summary>
    public static string? WordOf(Point point, Finding finding) => finding.Code == "step" && point.Unit.Name == "ppm" ? null : WordOf(point, finding.Level);

    /// <summary>The word for a finding about a point that can hurt by itself; null for any other.</summary>
    public static string? WordOf(Point point, Level level) =>
        point.Unit.Name == "ppm" && level >= Level.Watch ? "gas"
        : point.Choices.Count > 0 && level == Level.Urgent && point.Description.Contains("leak", StringComparison.OrdinalIgnoreCase) ? "release"
        : point is { Always: true, Choices.Count: > 0 } && level == Level.Urgent ? "seen"
        : null;
}
