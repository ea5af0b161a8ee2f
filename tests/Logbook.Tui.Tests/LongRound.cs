using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Tui.Tests;

/// <summary>The small line with a round of many points.</summary>
internal static class LongRound
{
    public static SiteFiles Files(int points)
    {
        string[] tags = [.. Enumerable.Range(1, points).Select(i => $"XX-{i}")];
        var rows = tags.Select(t => $"{t},Test point {t},site,%,read,1,0.1,0.5,0,100,,,,,,,,,,,");
        return Some.Changed(
            ("points = [\"SL-T1\", \"SL-F1\", \"LM-F1\", \"LM-CAO\"]", $"points = [{string.Join(", ", tags.Select(t => $"\"{t}\""))}]"),
            ("WL-TTA,", string.Join('\n', rows) + "\nWL-TTA,"));
    }
}
