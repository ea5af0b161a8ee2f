using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What the program says of one row.</summary>
/// <param name="Worst">Null when nothing stands out.</param>
/// <param name="Words">Short, for the row itself.</param>
/// <param name="Findings">In full, worst first.</param>
internal sealed record RowCheck(Level? Worst, string Words, IReadOnlyList<Finding> Findings)
{
    private const string NotComputed = "not computed";

    public static readonly RowCheck None = new(null, "", []);

    public static RowCheck Of(Point point, IReadOnlyList<Finding> findings) => findings.Count == 0
        ? None
        : new RowCheck(findings[0].Level, $"{LevelWords.Of(findings[0].Level)}: {Short(point, findings[0])}{Jump(findings)}", findings);

    /// <summary>A value that is out of its limits and jumped there may be a slip of the finger: beside the limit the row says so. Beside what is urgent nothing is doubted.</summary>
    private static string Jump(IReadOnlyList<Finding> findings) =>
        findings[0].Level != Level.Urgent && findings.Skip(1).FirstOrDefault(f => f.Code == "step") is { } step
        && step.Text.IndexOf("changed by ", StringComparison.Ordinal) is >= 0 and var at && step.Text.IndexOf(" since ", at, StringComparison.Ordinal) is > 0 and var end
            ? $"; {step.Text[at..end]}, or misread" : "";

    /// <summary>The finding without what the row says already, and without what it asks for; of what is refused the reason.</summary>
    private static string Short(Point point, Finding finding)
    {
        if (Judging.IsImpossible(point, finding) && finding.Text.IndexOf(NotComputed, StringComparison.Ordinal) is >= 0 and var at && !finding.Text[..at].Contains(';', StringComparison.Ordinal))
        {
            return finding.Evidence.Count > 0 ? $"{NotComputed}: {finding.Evidence[0]}" : finding.Text[at..];
        }

        var words = finding.Text.StartsWith(point.Description, StringComparison.Ordinal) ? finding.Text[point.Description.Length..].TrimStart(':', ' ') : finding.Text;
        words = words.Split(';')[0];
        if (char.IsAsciiDigit(words.FirstOrDefault()) && words.IndexOf("changed by ", StringComparison.Ordinal) is > 0 and var changed)
        {
            return words[changed..];
        }

        var comma = words.IndexOf(", ", StringComparison.Ordinal);
        return comma > 0 && char.IsAsciiDigit(words[0]) ? words[(comma + 2)..] : words;
    }
}
