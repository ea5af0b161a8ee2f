using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Why this handover deserves more time than usual, in words.</summary>
internal static class TakeLonger
{
    // One reading without it does not make a slaker calm. Judgement, no source.
    internal static readonly TimeSpan Recent = TimeSpan.FromHours(2);

    /// <param name="state">What stood at <paramref name="now"/>.</param>
    /// <param name="begun">When the shift began of which it is told; of the one in hand when it is not given.</param>
    public static IReadOnlyList<string> Of(Desk desk, Site site, State state, DateTimeOffset now, DateTimeOffset? begun = null) =>
    [
        .. state.Carried.Where(i => !InAcid(state, i)).Select(i => Reason(site, i, now)).OfType<(int Rank, string Words)>().Distinct().OrderBy(r => r.Rank).Select(r => r.Words),
        .. state.Upset is { } upset ? [$"upset since {Say.Time(site, upset.Began, now)}"] : Array.Empty<string>(),
        .. state.Equipment.Values.Where(e => e.State is "acid" or "starting").OrderBy(e => e.Since).ThenBy(e => e.Seq)
            .Select(e => $"{Say.Equipment(site, e.Equipment)} {(e.State == "acid" ? "in acid" : "starting up")}"),
        .. state.Findings.Values.SelectMany(f => f).Where(f => f.Finding.Level == Level.Urgent).OrderBy(f => f.At).ThenBy(f => f.Seq).ThenBy(f => f.Number)
            .Select(f => f.Finding.Point).OfType<string>().Distinct(StringComparer.Ordinal).Where(tag => !IsNamed(site, state, tag)).Select(tag => Urgent(site, state, tag)),
        .. InTheShift(desk, site, state, now, begun ?? ShiftInHand.Of(desk).Start),
    ];

    /// <summary>Who was hurt by words alone, and what was urgent and is over.</summary>
    private static IEnumerable<string> InTheShift(Desk desk, Site site, State state, DateTimeOffset now, DateTimeOffset begun)
    {
        var records = JournalSpan.Touching(desk, begun < now - Recent ? begun : now - Recent, now);
        return
        [
            .. records.Where(r => r.At >= begun && r.At <= now && InjuryWords.TellsOfInjury(r) && !InjuryWords.MaySpeakOf(state, records, r)).Select(r => $"injury, told {Say.Time(site, r.At, now)}"),
            .. JustUrgent(records, site, state, now, begun),
        ];
    }

    /// <summary>
    /// What was urgent at the slaker and which gas a short while ago, each point at its last time, though a later reading is without it:
    /// it can come again. What leaked stands for the whole shift: where it ran to is there.
    /// </summary>
    private static IEnumerable<string> JustUrgent(IReadOnlyList<JournalRecord> records, Site site, State state, DateTimeOffset now, DateTimeOffset begun) =>
        Corrected.Entries(records).Where(e => e.Record.At <= now)
            .SelectMany(e => e.Entry.Findings.Where(f => f.Level == Level.Urgent).Select(f => (Point: site.FindPoint(f.Point ?? ""), e.Record.At)))
            .Where(f => f.Point is { } point && (point.Area == "slaker" || Hazards.WordOf(point, Level.Urgent) is "gas" or "release")
                && f.At >= (Hazards.WordOf(point, Level.Urgent) is "release" ? begun : now - Recent) && !IsNamed(site, state, point.Tag) && !state.Findings.GetValueOrDefault(point.Tag, []).Exists(s => s.Finding.Level == Level.Urgent))
            .GroupBy(f => f.Point!, f => f.At).OrderByDescending(g => g.Max())
            .Select(g => $"{Say.Visible(g.Key.Description)} urgent at {Say.Time(site, g.Max(), now)}");

    /// <summary>A wash whose equipment is in acid is one reason, with the equipment's name.</summary>
    private static bool InAcid(State state, CarriedItem item) =>
        item.ItemKind == "wash" && state.Equipment.Values.Any(e => e.State == "acid" && e.Equipment.Equals(item.On, StringComparison.OrdinalIgnoreCase));

    /// <summary>What was seen of a thing that an open item names already.</summary>
    private static bool IsNamed(Site site, State state, string tag) => site.FindPoint(tag) is { } point && state.Carried.Exists(i => Hazards.IsOf(site, i, point));

    /// <summary>A receiver who was away longer than the pattern's longest planned break.</summary>
    public static IEnumerable<string> Away(Desk desk, string by)
    {
        var planned = TimeSpan.FromDays(LongestBreak(desk.Site.Crews.Pattern)) + Slack;
        if (Since.LastTime(desk, by)?.At is not { } last)
        {
            if (desk.Now - JournalSpan.Begin(desk) > planned)
            {
                yield return $"{Say.Person(desk.Site, by)} was never here before, as far as the log tells";
            }
        }
        else if (desk.Now - last > planned)
        {
            yield return $"{Say.Person(desk.Site, by)} was last here {Say.Day(desk.Site, last)}, {Say.Count((int)(desk.Now - last).TotalDays, "day")} ago, longer than the longest planned break";
        }
    }

    // From the end of the last shift to the beginning of the next is a little more than the days off. Judgement.
    private static readonly TimeSpan Slack = TimeSpan.FromHours(24);

    /// <summary>Days off in a row, also over the pattern's end.</summary>
    private static int LongestBreak(string pattern) => (pattern + pattern).Split(pattern.Where(c => c != 'o').Distinct().ToArray()).Max(run => Math.Min(run.Length, pattern.Length));

    /// <summary>Point and choice in words: a tag says little to who comes in.</summary>
    private static string Urgent(Site site, State state, string tag) => site.FindPoint(tag) is not { } point ? $"{Say.Visible(tag)} urgent"
        : point.Choices.Count > 0 && state.Latest.GetValueOrDefault(tag) is { Value: { } value, Unit: var unit } ? $"{Say.Visible(point.Description)}: {Say.Value(point, value, unit)}"
        : $"{Say.Visible(point.Description)} urgent";

    /// <summary>In the order in which they can hurt.</summary>
    private static (int Rank, string Words)? Reason(Site site, CarriedItem item, DateTimeOffset now) => item.ItemKind switch
    {
        "permit" when Hazards.SomeoneInside(item) => (0, $"person in {Say.Equipment(site, item.On)}{(item.Until < now ? ", permit PAST" : "")}"),
        "permit" => (1, "permit spans the change"),
        "isolation" => (2, "isolation spans the change"),
        "bypass" => (3, "trip defeated"),
        "safety-equipment" => (4, $"safety equipment out: {Hazards.Name(site, item)}"),
        "wash" when item.IsHazard => (5, "acid wash"),
        "injury" => (6, $"injury: {Say.Person(site, item.Fields.GetValueOrDefault("who") ?? "somebody")}"),
        "release" => (7, $"release: {Say.Equipment(site, item.On)}"),
        _ => null,
    };
}
