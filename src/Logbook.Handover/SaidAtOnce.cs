using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// What is said of an entry while it is typed and when it is saved: what is new in it, and in short what still does not fit.
/// An alarm that is computed from a doubted reading says so each time: told bare it would be acted on.
/// </summary>
public static class SaidAtOnce
{
    /// <param name="links">Of the site.</param>
    /// <param name="findings">Of the entry.</param>
    public static IReadOnlyList<Finding> Of(Links links, IReadOnlyList<Finding> findings)
    {
        List<string> doubted = [.. findings.Where(Doubted.Doubts).Select(f => f.Point!)];
        string See(string? alarm) => alarm is not null && doubted.Find(d => links.Makes(d, alarm) && d != alarm) is { } tag ? $" (doubted: see {tag})" : "";
        return
        [
            .. from finding in findings
               let still = finding.Again is true
               where !still || Doubted.Doubts(finding)
               select finding with { Text = still ? $"still: {FindingText.InShort(finding)}" : finding.Text + (IsLimit(finding) ? See(finding.Point) : "") },
        ];
    }

    private static bool IsLimit(Finding finding) => finding.Code.StartsWith("limit.", StringComparison.Ordinal);
}
