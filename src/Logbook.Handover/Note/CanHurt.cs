using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What can hurt, in full, and for every other kind that nothing is recorded: never that there is none.</summary>
internal static class CanHurt
{
    public static NoteSection Of(ShiftFacts facts) => Of(facts, h => h.Text);

    /// <summary>The same for the page that is read before the line is taken: all that can hurt, without whose it is and who opened it.</summary>
    public static NoteSection OnPage(ShiftFacts facts) => Of(facts, h => h.OnPage);

    private static NoteSection Of(ShiftFacts facts, Func<HazardLine, string> words)
    {
        var hazards = facts.Hazards;
        // What was there in this shift was not "none", though it is over.
        List<NoteLine> were = [.. Injured(facts), .. OverHazards.Of(facts), .. EndedHazards.Of(facts)];
        var said = hazards.Select(h => h.Word).Concat(were.Select(l => l.Label)).SelectMany(Speaks).ToHashSet(StringComparer.Ordinal);
        var since = hazards.Where(h => h.Seq > (facts.Declared?.Seq ?? long.MaxValue)).Select(h => h.Word).SelectMany(Speaks).ToHashSet(StringComparer.Ordinal);
        HashSet<string> silent = [.. HazardSections.All.Except(said, StringComparer.Ordinal)];
        return new NoteSection(
            "can-hurt",
            "CAN HURT",
            [.. hazards.Select(h => new NoteLine(h.Word, words(h))), .. were, .. Reserved(facts), .. facts.Declared is { } declared ? Declared(facts, declared, silent, since) : NotDeclared(silent)])
        {
            Beside = "as recorded here; the lock board and the permit office rule",
        };
    }

    /// <summary>The sections of which a line speaks: to say "none recorded" of them would not be true.</summary>
    private static string[] Speaks(string word) => word switch
    {
        "seen" => ["defeated", "out"], // may be either
        "permit" => ["inside"],        // nothing is known of who is
        _ => [word],
    };

    private static IEnumerable<NoteLine> Injured(ShiftFacts facts) => facts.Records.Where(InjuryWords.TellsOfInjury).Select(r => new NoteLine("injury", r.Body is HandoverRelief
        ? $"the line was taken in an emergency {facts.Time(r.At)}: {InjuryWords.Said(facts.Desk, r)} {Say.Person(facts.Site, r.By)} {Say.Ref(r.Seq)}"
        : $"{InjuryWords.Said(facts.Desk, r)} {Say.Person(facts.Site, r.By)} {facts.Time(r.At)} {Say.Ref(r.Seq)}{(InjuryWords.MaySpeakOf(facts.State, facts.Records, r) ? " It may speak of who is recorded as hurt already." : "")}"));

    /// <summary>What the one who holds the line took it over with, in own words: it stands beside what was not checked, until the line goes on.</summary>
    private static IEnumerable<NoteLine> Reserved(ShiftFacts facts) =>
        AcceptedNote.LastIn(facts) is { Body: HandoverAccepted { Reservation: { } but } } record
            ? [new NoteLine("reserved", $"taken over {facts.Time(record.At)} by {Say.Person(facts.Site, record.By)}, but not without saying: {Say.Sentence(but)} {Say.Ref(record.Seq)}")] : [];

    private static IEnumerable<NoteLine> NotDeclared(HashSet<string> silent) =>
        silent.Count == 0 ? [] : [new NoteLine("others", $"{List(silent)}: none recorded; not declared")];

    /// <summary>What was not checked comes first: it is the one that somebody has still to do.</summary>
    /// <param name="since">Sections with a line that came after the declaration: it does not speak of that.</param>
    private static IEnumerable<NoteLine> Declared(ShiftFacts facts, Declaration declared, HashSet<string> silent, HashSet<string> since) =>
        declared.Sections.GroupBy(s => (s.Value, Silent: silent.Contains(s.Key), Since: since.Contains(s.Key), Changed: declared.Changes?.GetValueOrDefault(s.Key)), s => s.Key)
            .OrderBy(g => Order.IndexOf(g.Key.Value)).ThenBy(g => g.Key.Silent)
            .Select(g => new NoteLine(
                "declared",
                $"{List(g)}: {(g.Key.Silent && g.Key.Value != "change" ? "none recorded; " : "")}{Word(g.Key.Value, g.Key.Changed)}, {Say.Person(facts.Site, declared.By)} {facts.Time(declared.At)}{(g.Key.Since ? ", BEFORE what came since" : "")}"));

    private static readonly List<string> Order = ["not-checked", "change", "checked"];

    private static string Word(string declared, string? changed) => declared switch
    {
        "checked" => "checked",
        "change" when changed is not null => $"CHANGED: {Say.Visible(changed)}",
        "change" => "CHANGED, see own words",
        _ => "NOT CHECKED",
    };

    private static string List(IEnumerable<string> names) => string.Join(", ", HazardSections.All.Intersect(names, StringComparer.Ordinal));
}
