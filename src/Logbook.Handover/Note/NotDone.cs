using System.Globalization;

namespace Logbook.Handover;

/// <summary>Checks that were missed, late or not taken, slots that share a fate in one line, and the sums over the shift.</summary>
internal static class NotDone
{
    public static NoteSection Of(ShiftFacts facts)
    {
        // What falls due later is coming, though its window may be open.
        var applies = facts.Checks.Where(c => c.State is not CheckState.NotApplicable and not CheckState.Coming && (c.State != CheckState.Due || c.DueAt <= facts.AsOf)).ToList();
        return NoteSection.Of(
            "not-done",
            "NOT DONE",
            [.. Upsets(facts), .. applies.GroupBy(c => c.Round, StringComparer.Ordinal).SelectMany(r => Lines(facts, r.Key, [.. r])).OrderBy(l => Order.IndexOf(l.Label)), .. CountsFor.Beyond(facts), .. Sums(applies)]);
    }

    private static readonly List<string> Order = ["upset", "said later", "missed", "late", "not taken", "open"];

    /// <summary>One line for each upset: what was not walked is not a miss each, and the safety points are told. Rest that was said later is a line too.</summary>
    private static IEnumerable<NoteLine> Upsets(ShiftFacts facts)
    {
        foreach (var upset in facts.Checks.Where(c => (c.Upset || c.SaidLater is not null) && c.DueAt <= facts.AsOf).GroupBy(c => c.Why, StringComparer.Ordinal))
        {
            var slots = upset.Select(c => (c.Round, c.DueAt)).ToHashSet();
            // A round of which something was read was walked: what is left of it is told by name.
            var begun = facts.Checks.Where(c => slots.Contains((c.Round, c.DueAt)) && c.State is CheckState.Done or CheckState.Late or CheckState.NotTaken
                && facts.Site.FindPoint(c.Point) is not { Always: true }).Select(c => (c.Round, c.DueAt)).ToHashSet();
            var rounds = slots.Except(begun).GroupBy(s => s.Round, s => s.DueAt, StringComparer.Ordinal).Select(r => $"{Title(facts, r.Key)} {Times(facts, r.Key, r)}").ToList();
            var rest = upset.Where(c => begun.Contains((c.Round, c.DueAt))).GroupBy(c => (c.Round, c.DueAt))
                .GroupBy(r => (r.Key.Round, Points: string.Join(", ", r.Select(c => Say.Visible(c.Point)))), r => r.Key.DueAt)
                .Select(r => $"not read in {Title(facts, r.Key.Round)} {Times(facts, r.Key.Round, r)}: {r.Key.Points}");
            var safety = facts.Checks.Where(c => slots.Contains((c.Round, c.DueAt)) && c.State is CheckState.Done or CheckState.Late or CheckState.NotTaken or CheckState.Missed
                && facts.Site.FindPoint(c.Point) is { Always: true }).ToList();
            var done = safety.Count(c => c.State is CheckState.Done or CheckState.Late);
            // Where none was read the number says it; where some were, which ones were not.
            var unread = safety.Where(c => c.State == CheckState.Missed).GroupBy(c => c.Point, StringComparer.OrdinalIgnoreCase).Select(p => $"{Say.Visible(p.Key)} {Times(facts, p.First().Round, p.Select(c => c.DueAt))}");
            var read = safety.Count == 0 ? "" : $"; safety points: {done} of {safety.Count} read{(done > 0 && safety.Exists(c => c.State == CheckState.Missed) ? ", MISSED " + string.Join("; ", unread) : "")}";
            // Declared afterwards it is still one line, and its checks count as what they are.
            var missed = upset.First().State == CheckState.Missed ? $", {Say.Count(upset.Count() + safety.Count(c => c.State == CheckState.Missed), "check")} missed" : "";
            yield return new NoteLine(upset.First().Upset ? "upset" : missed.Length > 0 ? "missed" : "said later", $"{upset.Key}, {string.Join("; ", [.. rounds.Count > 0 ? [$"not walked{missed}: {string.Join("; ", rounds)}"] : Array.Empty<string>(), .. rest])}{read}");
        }
    }

    private static string Title(ShiftFacts facts, string round) => Say.Visible(InsteadOfTrips.Title(facts.Site, round));

    // From here on a row of times is said by its ends.
    private const int Row = 3;

    /// <summary>Times of a round's slots; those that follow each other without a gap by their ends: <c>19:00 to 06:00 (12)</c>.</summary>
    private static string Times(ShiftFacts facts, string round, IEnumerable<DateTimeOffset> slots)
    {
        var all = facts.Checks.Where(c => c.Round == round).Select(c => c.DueAt).Distinct().Order().ToList();
        var rows = slots.Distinct().Order().Select((at, i) => (At: at, Row: all.IndexOf(at) - i)).GroupBy(s => s.Row, s => s.At).Select(g => g.ToList());
        return string.Join(", ", rows.Select(row => row.Count < Row
            ? string.Join(", ", row.Select(facts.Time))
            : string.Create(CultureInfo.InvariantCulture, $"{facts.Time(row[0])} to {facts.Time(row[^1])} ({row.Count})")));
    }

    private static IEnumerable<NoteLine> Lines(ShiftFacts facts, string round, List<DueCheck> checks)
    {
        var title = Title(facts, round);
        var slots = checks.GroupBy(c => c.DueAt).Select(g => g.ToList()).ToList();
        // In an upset the safety points that nobody read are told with it, by name.
        var upset = facts.Checks.Where(c => (c.Upset || c.SaidLater is not null) && c.Round == round).Select(c => c.DueAt).ToHashSet();
        var silent = slots.Where(s => !upset.Contains(s[0].DueAt) && s.TrueForAll(c => c is { State: CheckState.Missed, TypedLater: false })).ToList();
        if (silent is { Count: > 0 } missed)
        {
            var counts = missed.Select(s => s.Count).Distinct().ToList();
            yield return new NoteLine(
                "missed",
                $"{title} {Times(facts, round, missed.Select(s => s[0].DueAt))}: no reading in the window, {string.Join(" or ", counts)} {(counts is [1] ? "check" : "checks")}{(missed.Count > 1 ? " each" : "")}");
        }

        foreach (var slot in slots.Except(silent))
        {
            foreach (var fate in slot.Where(c => c.State is not CheckState.Done && !(c is { State: CheckState.Missed, TypedLater: false } && upset.Contains(c.DueAt)))
                .GroupBy(c => (c.State, c.Why, c.Seq)).OrderBy(g => g.Key.State))
            {
                yield return Fate(facts, title, slot.Count, [.. fate]);
            }
        }
    }

    private static NoteLine Fate(ShiftFacts facts, string title, int asked, List<DueCheck> checks)
    {
        var first = checks[0];
        var which = checks.Count == asked && asked > 1 ? $"all {asked}" : string.Join(", ", checks.Select(c => Say.Visible(c.Point)));
        var (label, fate) = first.State switch
        {
            CheckState.Missed when first.TakenBack || first.TypedLater => ("missed", first.Why),
            CheckState.Missed => ("missed", "no reading in the window"),
            CheckState.NotTaken => ("not taken", Say.Visible(string.IsNullOrWhiteSpace(first.Why) ? "no reason given" : first.Why)),
            CheckState.Late => ("late", first.Why),
            _ => ("open", $"until {facts.Time(first.Closes)}"),
        };
        return new NoteLine(label, $"{title} {facts.Time(first.DueAt)}, {which}: {fate}{(first.Seq is { } seq ? " " + Say.Ref(seq) : "")}");
    }

    private static IEnumerable<NoteLine> Sums(List<DueCheck> applies)
    {
        int Count(CheckState state) => applies.Count(c => c.State == state);
        if (applies.Count > 0)
        {
            (CheckState State, string Word)[] others = [(CheckState.Late, "late"), (CheckState.NotTaken, "not taken"), (CheckState.Missed, "missed"), (CheckState.Due, "still open")];
            yield return new NoteLine("", string.Create(CultureInfo.InvariantCulture, $"{Count(CheckState.Done)} of {Say.Count(applies.Count, "check")} due so far on time")
                + string.Concat(others.Where(o => Count(o.State) > 0).Select(o => string.Create(CultureInfo.InvariantCulture, $", {Count(o.State)} {o.Word}"))) + ".");
        }
    }
}
