using System.Diagnostics;
using System.Globalization;
using Logbook;

namespace Benchmarks;

/// <summary>Loading the shipped plug-ins for the first time in a process, which can be timed once in each.</summary>
internal static class ColdPlugins
{
    /// <summary>The argument with which this program only does that, and prints the milliseconds.</summary>
    public const string Word = "load-plug-ins";

    public static void Load()
    {
        var start = Stopwatch.GetTimestamp();
        var plugins = OpenSite.Plugins(Shell.OfProcess(), site: null);
        var taken = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        if (plugins.Any(p => p.Text.Length > 0))
        {
            throw new InvalidOperationException("a shipped plug-in was not loaded");
        }

        Console.WriteLine(taken.ToString(CultureInfo.InvariantCulture));
    }

    public static double[] InNewProcesses(int times) => [.. Enumerable.Range(0, times).Select(_ => InNewProcess())];

    private static double InNewProcess()
    {
        using var process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, Word) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var line = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return double.Parse(line, CultureInfo.InvariantCulture);
    }
}
