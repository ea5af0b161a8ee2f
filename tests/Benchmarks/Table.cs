using System.Diagnostics;
using System.Globalization;

namespace Benchmarks;

/// <summary>Times things in one run and prints them as one table, for README.</summary>
internal static class Table
{
    public static void Header() => Console.WriteLine($"{"what",-56} {"least",10} {"median",10} {"p95",10}");

    /// <summary>Runs <paramref name="action"/> once to warm up (unless it must be cold) and then <paramref name="times"/> times.</summary>
    public static double Row(string what, int times, Action action, bool warm = true)
    {
        if (warm)
        {
            action();
        }

        var taken = new double[times];
        for (var i = 0; i < times; i++)
        {
            taken[i] = Time(action);
        }

        return Row(what, taken);
    }

    /// <summary>How long it takes, in milliseconds.</summary>
    public static double Time(Action action)
    {
        var start = Stopwatch.GetTimestamp();
        action();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    /// <summary>A row of times that were taken elsewhere, in milliseconds; gives their median.</summary>
    public static double Row(string what, double[] taken)
    {
        var times = taken.Length;
        Array.Sort(taken);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-56} {taken[0],7:0.00} ms {taken[times / 2],7:0.00} ms {taken[(int)(times * 0.95)],7:0.00} ms"));
        return taken[times / 2];
    }
}
