using System.Globalization;
using Logbook.Checks.Charts;
using Logbook.Journal;

namespace Logbook.Checks;

/// <summary>
/// The same reading too many times in a row for this point's resolution against its spread from reading to reading: a run
/// that comes by chance less than once in 200 times within 60 readings. Readings in quick succession are one look. Points that
/// are nearly always the same, or have too little history, are not judged. A run is told once; while it lasts each further
/// reading keeps the finding, as one that only goes on.
/// </summary>
internal static class StuckCheck
{
    private const string Code = "stuck";
    private const double Odd = 1.0 / 200;
    private const int FewestPairs = 20;
    private const int FewestEqual = 4;

    private static readonly TimeSpan Near = TimeSpan.FromHours(24);
    private static readonly TimeSpan Far = TimeSpan.FromDays(14);

    public static IEnumerable<Finding> Findings(Day day, PointReading judged)
    {
        var (point, at) = (judged.Point, judged.Reading.At);
        if (judged.Number is not { } value || day.LastCompared(point, at)?.Value != value || !day.AtWork(point.Equipment, at))
        {
            yield break;
        }

        var near = day.Compared(point, at - Near, at).ToList();
        var equalNow = near.AsEnumerable().Reverse().TakeWhile(v => v.Value == value).Count();
        if (equalNow + 1 < FewestEqual)
        {
            yield break;
        }

        // The last day is at hand; two weeks are looked up only where a day is too little to judge by.
        var history = near.Count - equalNow > FewestPairs ? near : [.. day.Compared(point, at - Far, at)];
        var run = history.AsEnumerable().Reverse().TakeWhile(v => v.Value == value).ToList();
        var equal = Apart(history, run, at) + 1;
        var resolution = point.Resolution ?? Math.Pow(10, -point.Decimals);
        if (equal >= FewestEqual && Usual([.. history.Take(history.Count - run.Count).Select(v => v.Value!.Value)]) is { } sigma && Stuck.ChanceOfRepeat(resolution, sigma) is < 0.5 and var p
            && Stuck.ChanceOfRun(resolution, sigma, equal) < Odd)
        {
            yield return new Finding(Level.Watch, Code, point.Tag,
                $"{point.Description}: {Words.Value(point, value)} {equal} times in a row, since {Words.Time(run[^1].At)}; too many for its resolution: stuck, or a very steady plant",
                [$"usually {(100 * p).ToString("F0", CultureInfo.InvariantCulture)} in 100 neighbours are equal", $"resolution {Words.Number(resolution)} {point.Unit}"])
            {
                Again = day.State.Findings.GetValueOrDefault(point.Tag)?.Exists(f => f.Finding.Code == Code && f.At >= run[^1].At) == true ? true : null,
            };
        }
    }

    /// <summary>How many of the run are apart by half the usual time at least: who looks twice in a minute sees the same.</summary>
    private static int Apart(List<SeriesValue> history, List<SeriesValue> newestFirst, DateTimeOffset at)
    {
        var usual = history.Skip(1).Zip(history, (later, before) => later.At - before.At).Order().ElementAtOrDefault(history.Count / 2);
        var (count, next) = (0, at);
        foreach (var reading in newestFirst)
        {
            (count, next) = next - reading.At >= usual / 2 ? (count + 1, reading.At) : (count, next);
        }

        return count;
    }

    /// <summary>The spread from reading to reading before the run; null when history is too short to say.</summary>
    private static double? Usual(IReadOnlyList<double> history) =>
        history.Count <= FewestPairs ? null : Spread.MovingRanges(history).Average() / Spread.D2;
}
