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
        return Silent(day, sheet)
            ? findings
            : [.. findings.Concat(DoubtFindings.Of(trail)).OrderByDescending(f => f.Level)];
    }

    /// <summary>Beside something urgent, and while the slaker is, nothing is doubted.</summary>
    public static bool Silent(Day day, Sheet sheet) =>
        sheet.Findings.Any(f => f.Level == Level.Urgent) || Judgement.SlakerIsUrgent(day, sheet.Judged(), sheet.Findings);
}
