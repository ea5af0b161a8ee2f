using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The words of a finding, shortened where not all of them still hold.</summary>
internal static class FindingText
{
    /// <summary>What it is at least: of a doubt its first sentence, of a broken limit the value.</summary>
    public static string AtLeast(Site site, Finding finding)
    {
        var text = WithoutAsking(site, finding);
        var end = finding.Code.StartsWith("examine.", StringComparison.Ordinal) ? text.IndexOf(". ", StringComparison.Ordinal)
            : finding.Code.StartsWith("limit.", StringComparison.Ordinal) ? text.LastIndexOf(", ", StringComparison.Ordinal)
            : -1;
        return end > 0 ? text[..end] : text;
    }

    /// <summary>What it was, in one sentence: once it is over, its evidence and what it asked for are no use.</summary>
    public static string InOne(Site site, Finding finding) =>
        finding.Code.StartsWith("examine.", StringComparison.Ordinal) ? AtLeast(site, finding) : WithoutAsking(site, finding);

    /// <summary>Of a doubt what it is, what would tell and what it means for safety, without its evidence; anything else whole.</summary>
    public static string InShort(Finding finding)
    {
        var sentences = Say.Sentence(finding.Text).Split(". ");
        return finding.Code.StartsWith("examine.", StringComparison.Ordinal)
            ? string.Join(". ", sentences.Where((s, i) => i == 0 || Tells.Any(t => s.Contains(t, StringComparison.Ordinal)))).TrimEnd('.') + "."
            : Say.Sentence(finding.Text);
    }

    // How the sentences are known that say what to do, or what a figure of safety would then be, wherever they stand.
    private static readonly string[] Tells = ["If so, ", " would tell", " would show a slip", " is sure to tell", "nothing has compared it since", "it would still explain"];

    /// <summary>
    /// What a finding asked for at the time stands after its value and limit; once it is over it would mislead. A point's own name
    /// may have such a break in it, and is no part of what is asked.
    /// </summary>
    public static string WithoutAsking(Site site, Finding finding)
    {
        var name = finding.Point is { } tag ? site.FindPoint(tag)?.Description ?? "" : "";
        var begin = finding.Text.IndexOf(name, StringComparison.Ordinal) is >= 0 and var at ? at + name.Length : 0;
        return finding.Text.IndexOf("; ", begin, StringComparison.Ordinal) is >= 0 and var end ? finding.Text[..end] : finding.Text;
    }
}
