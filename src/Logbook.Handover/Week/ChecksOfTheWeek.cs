using System.Globalization;

namespace Logbook.Handover;

/// <summary>Checks of the week by round, what was not done by crew, and the reasons that were given.</summary>
internal static class ChecksOfTheWeek
{
    public static NoteSection Of(WeekFacts week)
    {
        var checks = Applying(week);
        return NoteSection.Of(
            "checks",
            "CHECKS",
            [
                .. checks.GroupBy(c => c.Round, StringComparer.Ordinal).Select(r => new NoteLine("", $"{Say.Visible(InsteadOfTrips.Title(week.Site, r.Key))}: {Sums([.. r])}{ByCrew([.. r])}{InUpsets(week, [.. r])}")),
                .. checks.Where(c => c.State == CheckState.NotTaken).GroupBy(c => c.Why ?? "no reason given", StringComparer.OrdinalIgnoreCase).OrderByDescending(g => g.Count())
                    .Select(g => new NoteLine("not taken", $"{Say.Visible(g.Key)}: {Say.Count(g.Count(), "check")}, {string.Join(", ", g.GroupBy(c => c.Point, StringComparer.OrdinalIgnoreCase).OrderByDescending(p => p.Count()).Select(p => $"{Say.Visible(p.Key)} {p.Count()}"))}")),
            ]);
    }

    /// <summary>Checks that were not made on time, shift by shift.</summary>
    public static IEnumerable<NoteTrend> Curve(WeekFacts week)
    {
        var checks = Applying(week).ToLookup(c => c.ShiftId, StringComparer.Ordinal);
        return week.Shifts.Count == 0 ? [] :
        [
            new NoteTrend(
                "checks", "missed, said later, late or not taken, each shift", "checks",
                [.. week.Shifts.Select(s => (s.Start, (double)checks[s.Id].Count(c => c.SaidLater is not null || c.State is CheckState.Missed or CheckState.Late or CheckState.NotTaken)))], null, null, null, null),
        ];
    }

    /// <summary>The checks that fell due and applied, or of which it was said only afterwards that they did not.</summary>
    public static IReadOnlyList<DueCheck> Applying(WeekFacts week) =>
        [.. week.Span.Checks.Where(c => (c.SaidLater is not null || c.State != CheckState.NotApplicable) && c.State != CheckState.Coming && (c.State != CheckState.Due || c.DueAt <= week.Shift.AsOf))];

    /// <summary><c>27 of 43 checks on time, 1 not taken, 15 missed</c>.</summary>
    public static string Sums(IReadOnlyList<DueCheck> checks)
    {
        int Count(CheckState state) => checks.Count(c => c.State == state);
        (CheckState State, string Word)[] others = [(CheckState.Late, "late"), (CheckState.NotTaken, "not taken"), (CheckState.Missed, "missed"), (CheckState.Due, "still open")];
        return string.Create(CultureInfo.InvariantCulture, $"{Count(CheckState.Done)} of {Say.Count(checks.Count, "check")} on time")
            + string.Concat(others.Where(o => Count(o.State) > 0).Select(o => string.Create(CultureInfo.InvariantCulture, $", {Count(o.State)} {o.Word}")))
            + (checks.Count(c => c.SaidLater is not null && c.State == CheckState.NotApplicable) is > 0 and var later ? string.Create(CultureInfo.InvariantCulture, $", {later} not walked and said later") : "");
    }

    private static bool Missed(DueCheck check) => check.SaidLater is not null || check.State == CheckState.Missed;

    /// <summary>Of what a crew missed the safety points in upsets that were declared in time, by day: it had something else in hand.</summary>
    private static string InUpsets(WeekFacts week, IReadOnlyList<DueCheck> checks)
    {
        var spared = week.Span.Checks.Where(c => c.Upset).Select(c => (c.Round, c.DueAt)).ToHashSet();
        var missed = checks.Where(c => Missed(c) && spared.Contains((c.Round, c.DueAt))).ToList();
        return missed.Count == 0 ? "" : $", {missed.Count.ToString(CultureInfo.InvariantCulture)} of them safety points in the upset of {string.Join(", ", missed.Select(c => c.DueAt.ToString("d MMM", CultureInfo.InvariantCulture)).Distinct(StringComparer.Ordinal))}";
    }

    private static string ByCrew(IReadOnlyList<DueCheck> checks)
    {
        var crews = checks.GroupBy(c => c.ShiftId[(c.ShiftId.LastIndexOf('-') + 1)..], StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Where(g => g.Any(Missed)).Select(g => $"{Say.Visible(g.Key)} {g.Count(Missed)}/{g.Count()}").ToList();
        return crews.Count == 0 ? "" : $"; missed or said later by crew {string.Join(", ", crews)}";
    }
}
