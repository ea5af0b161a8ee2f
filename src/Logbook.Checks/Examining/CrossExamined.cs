using Logbook.Journal;

namespace Logbook.Checks.Examining;

/// <summary>
/// The last step before an entry is saved: is there a reading that cannot be right beside the others. Alarm first: beside an
/// urgent finding nothing is doubted, for its words may not be weakened, and nobody is asked to read or to sample again.
/// </summary>
internal static class CrossExamined
{
    /// <summary>The entry's findings with what the examination adds, behind all others of its level.</summary>
    public static IReadOnlyList<Finding> Findings(Day day, Sheet sheet)
    {
        var trail = day.Examinations.Of(day, sheet);
        var found = trail is null ? sheet.Findings : Examined(day, sheet, trail);
        return [.. found.Concat(StandingDoubts.Of(day, sheet, trail, found)).OrderByDescending(f => f.Level)];
    }

    /// <summary>That the plant was moved takes doubt away; it may be said beside anything.</summary>
    private static IReadOnlyList<Finding> Examined(Day day, Sheet sheet, Trail trail) =>
        [.. Moves.AsOne(sheet.Findings, trail).Concat(Silent(day, sheet) ? IfRight.BesideAlarm(day, sheet, trail) : Doubts(day, sheet, trail))];

    /// <summary>What does not fit, and what a figure of safety is if that is so: behind what is doubted, before its evidence.</summary>
    public static IEnumerable<Finding> Doubts(Day day, Sheet sheet, Trail trail)
    {
        var worse = IfRight.Words(day, sheet, trail);
        return DoubtFindings.Of(trail).Select(f => worse is not null && f.Text.IndexOf(". ", StringComparison.Ordinal) is > 0 and var end ? f with { Text = f.Text.Insert(end + 1, " " + worse) } : f);
    }

    /// <summary>Beside something urgent, and while the slaker is, nothing is doubted.</summary>
    public static bool Silent(Day day, Sheet sheet) =>
        sheet.Findings.Any(f => f.Level == Level.Urgent) || Judgement.SlakerIsUrgent(day, sheet.Judged(), sheet.Findings);
}
