using System.Diagnostics;
using System.Globalization;

namespace Soak;

/// <summary>One line a trial, as the table has it.</summary>
internal sealed class Line
{
    public int Acknowledged { get; set; }

    public List<string> Troubles { get; } = [];
}

/// <summary>Runs trials and prints what became of them as a table.</summary>
internal sealed class Report
{
    private const int MostSaid = 5;

    public Report() => Console.WriteLine($"{"what",-64} {"runs",7} {"acknowledged",13} {"lost or unsound",16} {"seconds",8}");

    public bool Lost { get; private set; }

    /// <param name="trial">Gets the run's number; returns what was lost, or null.</param>
    public void Run(string what, int runs, Func<int, Line, string?> trial)
    {
        var line = new Line();
        var start = Stopwatch.GetTimestamp();
        for (var run = 0; run < runs; run++)
        {
            if (trial(run, line) is { } trouble)
            {
                line.Troubles.Add(trouble);
            }
        }

        var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-64} {runs,7} {line.Acknowledged,13} {line.Troubles.Count,16} {seconds,8:0}"));
        foreach (var trouble in line.Troubles.Take(MostSaid))
        {
            Console.WriteLine("  " + trouble);
        }

        Lost |= line.Troubles.Count > 0;
    }
}
