using System.Diagnostics;
using System.Globalization;
using Logbook;
using Logbook.Storage.LiteDb;

namespace Benchmarks;

/// <summary>
/// Loading the shipped plug-ins for the first time in a process, which can be timed once in each: after the site's journal was
/// opened, as every command that computes does it.
/// </summary>
internal static class ColdPlugins
{
    /// <summary>The argument with which this program only does that, and prints the milliseconds.</summary>
    public const string Word = "load-plug-ins";

    public static void Load(string site)
    {
        var shell = Shell.OfProcess();
        using var journal = new LiteDbJournal(site, shell.Terminal, shell.Clock, TimeSpan.FromSeconds(5));
        ShortEnd.Warn(shell, journal);
        var start = Stopwatch.GetTimestamp();
        var plugins = OpenSite.Plugins(shell, site);
        var taken = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        if (plugins.Any(p => p.Text.Length > 0))
        {
            throw new InvalidOperationException("a shipped plug-in was not loaded");
        }

        Console.WriteLine(taken.ToString(CultureInfo.InvariantCulture));
    }

    public static double[] InNewProcesses(int times, string site) => [.. Enumerable.Range(0, times).Select(_ => InNewProcess(site))];

    private static double InNewProcess(string site)
    {
        using var process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, [Word, site]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var line = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return double.Parse(line, CultureInfo.InvariantCulture);
    }
}
