using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// Two things that the log says of the same equipment and that cannot both be true: it runs and is locked; people are inside,
/// or may be, since a permit is open and nobody was counted out, and it runs, is washed, drained or in acid; it runs and is in
/// an acid wash. Which one is true the log cannot know. Said before the second is recorded, when it is, and wherever the
/// hazard stands.
/// </summary>
public static class YetRecorded
{
    // Of equipment with people inside: whatever moves it, lets liquor through it or frees gas in it. Common practice, no source.
    private static readonly string[] AgainstPeople = ["running", "starting", "washing", "acid", "draining"];

    // What is not written yet has no number, and comes after all that is.
    private const long ToCome = long.MaxValue;

    /// <summary>What was just recorded of this equipment or area makes the two stand beside each other: the words to say at once; null when it does not.</summary>
    public static string? Warning(Desk desk, string place) => Words(desk.Site, desk.State.Equipment, desk.State.Carried, place, desk.Now);

    /// <summary>All that stands beside each other now, one pair in a line.</summary>
    public static IReadOnlyList<string> All(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, DateTimeOffset now) =>
        [.. from item in carried let beside = Beside(site, equipment, carried, item, now) where beside is not null select $"{Stands(site, item)}. {beside}"];

    /// <summary>The same before a state is recorded.</summary>
    public static string? Before(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, EquipmentStatus told, DateTimeOffset now) =>
        Words(site, new Dictionary<string, EquipmentStatus>(equipment, StringComparer.OrdinalIgnoreCase) { [told.Equipment] = told with { Seq = ToCome } }, carried, told.Equipment, now);

    /// <summary>The same before an item is opened or a count of people is told.</summary>
    public static string? Before(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, Carry item, string by, DateTimeOffset now) =>
        Words(site, equipment, [.. carried, new(ToCome, item.ItemKind, item.On, item.Text, item.Until, item.Owner, item.Fields, now, by)], item.On, now);

    /// <summary>The same before a look at an open item is recorded that counts people anew, or tells of acid.</summary>
    public static string? Before(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, CarryConfirmed look, DateTimeOffset now) =>
        carried.FirstOrDefault(i => i.Id == look.Id) is { } item ? Words(site, equipment, [.. carried.Select(i => i.Id == look.Id ? i.Told(look) : i)], item.On, now) : null;

    private static string? Words(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, string place, DateTimeOffset now)
    {
        var words = from item in carried
                    where Meet(site, item.On, place)
                    let beside = Beside(site, equipment, carried, item, now)
                    where beside is not null
                    select $"{Stands(site, item)}. {beside}";
        return string.Join(' ', words) is { Length: > 0 } all ? all : null;
    }

    /// <summary>What stands beside the hazard, each of it a sentence; null unless somebody recorded it.</summary>
    internal static string? Beside(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, CarriedItem item, DateTimeOffset now) =>
        string.Join(' ', Each(site, equipment, carried, item).Select(c => c.Words(site, item, now))) is { Length: > 0 } all ? all : null;

    /// <summary>Each thing that contradicts the hazard, by the record that tells of it.</summary>
    internal static IEnumerable<Contradiction> Each(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, CarriedItem item) => Go(item) is not { } go ? [] :
    [
        .. equipment.Values.Where(e => (Covers(site, item, e.Equipment) && Against(item, e)) || (EquipmentHistory.Runs(e.State) && carried.Any(i => item.MayBeInside && item.StandsOn(i) && Covers(site, i, e.Equipment)))).OrderBy(e => e.Since).ThenBy(e => e.Equipment, StringComparer.Ordinal)
            .Select(e => new Contradiction(e.Seq, e.Equipment, e.State.ToUpperInvariant(), e.Since, go, e.By)),
        .. item.MayBeInside ? carried.Where(wash => wash is { ItemKind: "wash", IsHazard: true } && Meet(site, wash.On, item.On) && !equipment.Values.Any(e => e.State == "acid" && Covers(site, item, e.Equipment)))
            .Select(wash => new Contradiction(wash.Id, wash.On, "IN AN ACID WASH", wash.Since, go, wash.By)) : [],
    ];

    /// <summary>The hazard in short: <c>Lime mud pump is locked, DO NOT START (#12)</c>.</summary>
    internal static string Stands(Site site, CarriedItem item) => $"{Say.Equipment(site, item.On)} {What(item)}{Ref(item.Id)}";

    /// <summary>
    /// Who may be inside at a place that is in acid, or in its area, and whose lock is on it: a line of acid alone would leave
    /// that to be put together by who reads it. Empty when nothing is recorded.
    /// </summary>
    internal static string InAcidBeside(Site site, IReadOnlyList<CarriedItem> carried, string place)
    {
        string Area(string of) => site.FindEquipment(of)?.Area ?? of;
        var people = carried.Where(i => i.MayBeInside && Area(i.On).Equals(Area(place), StringComparison.OrdinalIgnoreCase));
        var locks = carried.Where(i => i.ItemKind == "isolation" && Meet(site, i.On, place));
        return string.Concat(people.Select(i => $" PEOPLE {(SignedWriting.CountedInside(i) is null ? "MAY BE " : "")}INSIDE: {Stands(site, i)}.").Concat(locks.Select(i => $" LOCKED: {Stands(site, i)}.")));
    }

    /// <summary>True when the item is at this equipment, or at the area in which the equipment lies: who is in an area may be in any of it.</summary>
    public static bool Covers(Site site, CarriedItem item, string equipment) => item.On.Equals(equipment, StringComparison.OrdinalIgnoreCase) || LiesIn(site, equipment, item.On);

    private static bool Meet(Site site, string one, string other) => one.Equals(other, StringComparison.OrdinalIgnoreCase) || LiesIn(site, one, other) || LiesIn(site, other, one);

    private static bool LiesIn(Site site, string equipment, string area) =>
        site.FindEquipment(area) is null && area.Equals(site.FindEquipment(equipment)?.Area, StringComparison.OrdinalIgnoreCase);

    // A wash is opened while its equipment still runs: only what was recorded after that contradicts it.
    private static bool Against(CarriedItem item, EquipmentStatus status) => item.ItemKind switch
    {
        "permit" => AgainstPeople.Contains(status.State, StringComparer.OrdinalIgnoreCase),
        "wash" => EquipmentHistory.Runs(status.State) && status.Seq > item.Id,
        _ => EquipmentHistory.Runs(status.State),
    };

    private static string What(CarriedItem item) => item.ItemKind switch
    {
        "isolation" => "is locked, DO NOT START",
        "permit" when SignedWriting.CountedInside(item) is { } inside => $"has a permit to enter, {Say.Visible(inside)} counted inside",
        "permit" => "has an open permit, NOBODY COUNTED: people may be inside",
        _ => "has an open acid wash",
    };

    /// <summary>What to go by while the two stand beside each other; null for an item that nothing of this contradicts.</summary>
    private static string? Go(CarriedItem item) => item.ItemKind switch
    {
        "isolation" => "one of the two is not true; keep everybody clear of it and go by the lock board",
        "permit" when SignedWriting.CountedInside(item) is not null => "one of the two is not true; go by the attendant and the lock board at once",
        "permit" when item.MayBeInside => "treat people as inside until the attendant has counted none; go by the attendant and the lock board at once",
        "wash" when item.IsHazard => "one of the two is not true; treat it as in acid until somebody has looked",
        _ => null,
    };

    private static string Ref(long seq) => seq == ToCome ? "" : " " + Say.Ref(seq);

    /// <summary>What contradicts a hazard.</summary>
    /// <param name="Seq">The record that tells of it.</param>
    /// <param name="On">The equipment that it is recorded of.</param>
    /// <param name="State">What is recorded of it, as it is printed.</param>
    /// <param name="Go">What follows from the two.</param>
    /// <param name="By">Who told of it.</param>
    internal sealed record Contradiction(long Seq, string On, string State, DateTimeOffset Since, string Go, string By)
    {
        public string Words(Site site, CarriedItem item, DateTimeOffset now) =>
            $"{Recorded(site, item)} since {Say.Time(site, Since, now)}{Ref(Seq)}, {Tellers(site, item)}: {Go}.";

        /// <summary>Whom to ask: <c>told by Operator two, the lock by Operator one</c>.</summary>
        public string Tellers(Site site, CarriedItem item)
        {
            var (what, by) = item.ItemKind switch
            {
                "isolation" => ("lock", item.By),
                "permit" when item.Fields.ContainsKey("inside") => ("count", item.FieldsSet.GetValueOrDefault("inside")?.By ?? item.By),
                "permit" => ("permit", item.By),
                _ => ("wash", item.By),
            };
            return $"told by {Say.Person(site, By)}, the {what} by {Say.Person(site, by)}";
        }

        /// <summary><c>YET RECORDED AS ACID</c>; with the equipment's name where the hazard is on another place.</summary>
        public string Recorded(Site site, CarriedItem item) =>
            $"YET {(On.Equals(item.On, StringComparison.OrdinalIgnoreCase) ? "" : $"{Say.Equipment(site, On)} ")}{(Seq == ToCome ? "ABOUT TO BE " : "")}RECORDED AS {State}";
    }
}
