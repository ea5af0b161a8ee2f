namespace Logbook.Handover;

/// <summary>Every slot of every round of the shift with what became of it.</summary>
internal static class RoundsWalked
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "rounds",
        "ROUNDS",
        facts.Checks.Where(c => c.State != CheckState.Coming && (c.State != CheckState.Due || c.DueAt <= facts.AsOf))
            .GroupBy(c => (c.DueAt, c.Round)).OrderBy(g => g.Key.DueAt).Select(g => new NoteLine(facts.Time(g.Key.DueAt), Slot(facts, g.Key.Round, [.. g]))));

    private static string Slot(ShiftFacts facts, string round, List<DueCheck> checks)
    {
        var fates = checks.GroupBy(c => (c.State, Later: c.SaidLater is not null)).OrderBy(g => g.Key).Select(g => $"{g.Count()} {(!g.Key.Later ? Word(g.Key.State) : g.Key.State == CheckState.Missed ? "missed, upset declared afterwards" : "not walked and said later")}");
        var by = checks.Select(c => c.By).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Select(code => Say.Person(facts.Site, code));
        var entries = checks.Select(c => c.Seq).OfType<long>().Distinct().ToList();
        return $"{Say.Visible(InsteadOfTrips.Title(facts.Site, round))}, {Say.Count(checks.Count, "check")}: {string.Join(", ", fates)}"
            + (entries.Count == 0 ? "" : $"; {string.Join(", ", by)} {Say.Ref(entries)}");
    }

    private static string Word(CheckState state) => state switch
    {
        CheckState.Done => "on time",
        CheckState.Late => "late",
        CheckState.NotTaken => "not taken",
        CheckState.Missed => "missed",
        CheckState.NotApplicable => "not applicable",
        _ => "still open",
    };
}
