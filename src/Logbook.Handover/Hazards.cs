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
    public static readonly IReadOnlyList<string> Words = ["inside", "permit", "locked", "defeated", "out", "acid", "gas", "seen"];

    // After this long a count of people inside says nothing any more.
    private static readonly TimeSpan CountHolds = TimeSpan.FromHours(1);

    public static IReadOnlyList<HazardLine> Of(Site site, State state, DateTimeOffset now) =>
    [
        .. state.Carried.Where(i => i.IsHazard).Select(i => Open(site, i, now))
            .Concat(state.Equipment.Values.Where(e => e.State == "acid").Select(e => Acid(site, e, now)))
            .Concat(state.Findings.Values.SelectMany(f => f).Select(f => Seen(site, f, now)).OfType<HazardLine>())
            .OrderBy(h => Words.ToList().IndexOf(h.Word)).ThenBy(h => h.Since).ThenBy(h => h.Seq),
    ];

    /// <summary>True when someone is recorded inside equipment.</summary>
    public static bool SomeoneInside(CarriedItem item) => item.ItemKind == "permit" && item.Fields.ContainsKey("inside");

    private static HazardLine Open(Site site, CarriedItem item, DateTimeOffset now)
    {
        var place = Say.Equipment(site, item.On);
        var opened = Carried.Opened(site, item, now);
        var (word, text) = item.ItemKind switch
        {
            "permit" when SomeoneInside(item) => ("inside", $"{place}: {Carried.Rest(site, item, now, "inside")}. {Count(site, item, now)} Count again with the attendant at takeover."),
            "permit" => ("permit", $"{place}: {Carried.Rest(site, item, now)}. Nothing is recorded of who is inside; ask the attendant."),
            "isolation" => ("locked", $"{place}, DO NOT START: {Carried.Rest(site, item, now)}.{Locks(site, item)} Verify at the lock board."),
            "bypass" => ("defeated", $"{place}: {Carried.Rest(site, item, now)}.{Instead(item)}"),
            "safety-equipment" => ("out", $"{place}: {Carried.Rest(site, item, now)}.{Instead(item)}"),
            _ => ("acid", $"{place}: {Carried.Rest(site, item, now)}."),
        };
        return new HazardLine(word, $"{text} {opened}", item.Since, item.Id);
    }

    private static string Count(Site site, CarriedItem item, DateTimeOffset now)
    {
        var (at, by) = item.FieldsSet.GetValueOrDefault("inside") is { } set ? (set.At, set.By) : (item.Since, item.By);
        var counted = $"Counted {Say.Visible(item.Fields["inside"])} at {Say.Time(site, at, now)}, told by {Say.Person(site, by)}.";
        return now - at > CountHolds ? counted + " That is over an hour ago: count unknown, treat as inside." : counted;
    }

    private static string Locks(Site site, CarriedItem item) =>
        item.Locks.IsEmpty ? "" : $" Locks recorded: {string.Join(", ", item.Locks.Select(code => Say.Person(site, code)))}.";

    private static string Instead(CarriedItem item) =>
        item.Fields.ContainsKey("instead") ? "" : " Nothing is recorded of what to do instead.";

    private static HazardLine Acid(Site site, EquipmentStatus status, DateTimeOffset now) => new(
        "acid",
        $"{Say.Equipment(site, status.Equipment)}: in acid since {Say.Time(site, status.Since, now)}"
        + $"{(string.IsNullOrWhiteSpace(status.Why) ? "" : ", " + Say.Visible(status.Why))}. {Say.Person(site, status.By)} {Say.Ref(status.Seq)}",
        status.Since, status.Seq);

    /// <summary>Gas from the watch limit on; a look-and-listen safety point (eyewash, trip, hatch, guard) when it was seen urgent.</summary>
    private static HazardLine? Seen(Site site, OpenFinding open, DateTimeOffset now)
    {
        if (open.Finding.Point is not { } tag || site.FindPoint(tag) is not { } point || WordOf(point, open.Finding.Level) is not { } word)
        {
            return null;
        }

        var text = open.Finding.Text.Contains(point.Description, StringComparison.OrdinalIgnoreCase) ? open.Finding.Text : $"{point.Description}: {open.Finding.Text}";
        return new HazardLine(word, $"{Say.Sentence(text)} Read {Say.Time(site, open.At, now)} {Say.Ref(open.Seq)}", open.At, open.Seq);
    }

    /// <summary>The word for a finding about a point that can hurt by itself; null for any other.</summary>
    public static string? WordOf(Point point, Level level) =>
        point.Unit.Name == "ppm" && level >= Level.Watch ? "gas"
        : point is { Always: true, Choices.Count: > 0 } && level == Level.Urgent ? "seen"
        : null;
}
