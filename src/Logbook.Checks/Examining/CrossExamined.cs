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
        if (day.Examinations.Of(day, sheet) is not { } trail)
        {
            return sheet.Findings;
        }

        // That the plant was moved takes doubt away; it may be said beside anything.
        var findings = Moves.AsOne(sheet.Findings, trail);
        return [.. findings.Concat(Silent(day, sheet) ? IfRight.BesideAlarm(day, sheet, trail) : Doubts(day, sheet, trail)).OrderByDescending(f => f.Level)];
    }

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
