using System.Runtime.CompilerServices;

namespace Logbook.Notes.Tests;

/// <summary>Compares a text with the one that a person approved; what came out instead is left beside the test's program.</summary>
internal static class Approved
{
    public static void Matches(string name, string actual, [CallerFilePath] string test = "")
    {
        var approved = Path.Combine(Path.GetDirectoryName(test)!, "Approved", name);
        var received = Path.Combine(AppContext.BaseDirectory, "received." + name);
        File.WriteAllText(received, actual);
        Assert.True(File.Exists(approved), $"nothing is approved as {approved}; what came out is {received}");

        var (expected, lines) = (File.ReadAllText(approved).Split('\n'), actual.Split('\n'));
        for (var i = 0; i < Math.Max(expected.Length, lines.Length); i++)
        {
            var (want, got) = (expected.ElementAtOrDefault(i), lines.ElementAtOrDefault(i));
            Assert.True(want == got, $"{name}:{i + 1} differs from what is approved\n  approved: {want}\n  came out: {got}\n  whole text: {received}");
        }
    }
}
