using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What the program says of one row.</summary>
/// <param name="Worst">Null when nothing stands out.</param>
/// <param name="Words">Short, for the row itself.</param>
/// <param name="Findings">In full, worst first.</param>
internal sealed record RowCheck(Level? Worst, string Words, IReadOnlyList<Finding> Findings)
{
    public static readonly RowCheck None = new(null, "", []);

    public static RowCheck Of(Point point, IReadOnlyList<Finding> findings) => findings.Count == 0
        ? None
        : new RowCheck(findings[0].Level, $"{LevelWords.Of(findings[0].Level)}: {Short(point, findings[0].Text)}", findings);

    /// <summary>The finding without what the row says already, and without what it asks for.</summary>
    private static string Short(Point point, string text)
    {
        var words = text.StartsWith(point.Description, StringComparison.Ordinal) ? text[point.Description.Length..].TrimStart(':', ' ') : text;
        words = words.Split(';')[0];
        var comma = words.IndexOf(", ", StringComparison.Ordinal);
        return comma > 0 && char.IsAsciiDigit(words[0]) ? words[(comma + 2)..] : words;
    }
}
