namespace Logbook.Handover;

/// <summary>What can hurt, in full, and for every other kind that nothing is recorded: never that there is none.</summary>
internal static class CanHurt
{
    public static NoteSection Of(ShiftFacts facts)
    {
        var hazards = Hazards.Of(facts.Site, facts.State, facts.AsOf);
        var said = hazards.Select(h => h.Word).ToHashSet(StringComparer.Ordinal);
        // What was seen bad may be either of these: that none is recorded would not be true.
        HashSet<string> silent = [.. HazardSections.All.Except(said.Contains("seen") ? [.. said, "defeated", "out"] : said, StringComparer.Ordinal)];
        return new NoteSection(
            "can-hurt",
            "CAN HURT",
            [.. hazards.Select(h => new NoteLine(h.Word, h.Text)), .. facts.Declared is { } declared ? Declared(facts, declared, silent) : NotDeclared(silent)])
        {
            Beside = "as recorded here; the lock board and the permit office rule",
        };
    }

    private static IEnumerable<NoteLine> NotDeclared(HashSet<string> silent) =>
        [new NoteLine("others", $"{List(silent)}: none recorded; not declared")];

    /// <summary>What was not checked comes first: it is the one that somebody has still to do.</summary>
    private static IEnumerable<NoteLine> Declared(ShiftFacts facts, Declaration declared, HashSet<string> silent) =>
        declared.Sections.GroupBy(s => (s.Value, Silent: silent.Contains(s.Key)), s => s.Key)
            .OrderBy(g => Order.IndexOf(g.Key.Value)).ThenBy(g => g.Key.Silent)
            .Select(g => new NoteLine(
                g.Key.Silent ? "others" : "above",
                $"{List(g)}: {(g.Key.Silent && g.Key.Value != "change" ? "none recorded; " : "")}{Word(g.Key.Value)}, {Say.Person(facts.Site, declared.By)} {facts.Time(declared.At)}"));

    private static readonly List<string> Order = ["not-checked", "change", "checked"];

    private static string Word(string declared) => declared switch
    {
        "checked" => "checked",
        "change" => "CHANGED, see own words",
        _ => "NOT CHECKED",
    };

    private static string List(IEnumerable<string> names) => string.Join(", ", HazardSections.All.Intersect(names, StringComparer.Ordinal));
}
