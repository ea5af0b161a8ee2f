using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A finding's words, with what they are about where they do not say it themselves.</summary>
internal static class FindingWords
{
    public static string Of(Site site, Finding finding) =>
        finding.Point is { } tag && site.FindPoint(tag) is { } point && !finding.Text.Contains(point.Description, StringComparison.OrdinalIgnoreCase)
            ? $"{point.Description}: {finding.Text}"
            : finding.Text;
}
