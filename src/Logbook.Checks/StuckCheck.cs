using System.Globalization;
using Logbook.Journal;

namespace Logbook.Checks;

/// <summary>
/// The same reading too many times in a row for this point's resolution. For normal readings two neighbours are equal
/// with probability p = resolution / (2 sqrt(pi) sigma), sigma being the spread from reading to reading; a run of k within
/// 60 readings then has the probability 60 (1 - p) p^(k-1), and is odd below 1 in 200. Points that are nearly always the
/// same, or have too little history, are not judged.
/// </summary>
internal static class StuckCheck
{
    private const double Odd = 1.0 / 200;
    private const int FewestPairs = 20;
    private const int FewestEqual = 4;

    /// <summary>Mean moving range of two over this is sigma (d2 of span two, 2 / sqrt(pi)).</summary>
    private static readonly double D2 = 2 / Math.Sqrt(Math.PI);

    private static readonly TimeSpan Near = TimeSpan.FromHours(24);
    private static readonly TimeSpan Far = TimeSpan.FromDays(14);

    public static IEnumerable<Finding> Findings(Day day, PointReading judged)
    {
        var (point, at) = (judged.Point, judged.Reading.At);
        if (judged.Number is not { } value || day.Last(point, at)?.Value != value || !day.AtWork(point.Equipment, at))
        {
            yield break;
        }

        var near = day.Series(point, at - Near, at).Reverse().TakeWhile(v => v.Value == value).ToList();
        if (near.Count + 1 < FewestEqual)
        {
            yield break;
        }

        var far = day.Series(point, at - Far, at).ToList();
        var run = far.AsEnumerable().Reverse().TakeWhile(v => v.Value == value).ToList();
        var equal = run.Count + 1;
        var resolution = point.Resolution ?? Math.Pow(10, -point.Decimals);
        if (ChanceOfRepeat([.. far.Take(far.Count - run.Count).Select(v => v.Value!.Value)], resolution) is { } p && IsOdd(p, equal))
        {
            yield return new Finding(Level.Watch, "stuck", point.Tag,
                $"{point.Description}: {Words.Value(point, value)} {equal} times in a row, since {Words.Time(run[^1].At)}; too many for its resolution: stuck, or a very steady plant",
                [$"usually {(100 * p).ToString("F0", CultureInfo.InvariantCulture)} in 100 neighbours are equal", $"resolution {Words.Number(resolution)} {point.Unit}"]);
        }
    }

    /// <summary>The probability that two honest neighbours are equal; null when history cannot say.</summary>
    internal static double? ChanceOfRepeat(IReadOnlyList<double> history, double resolution)
    {
        if (history.Count <= FewestPairs)
        {
            return null;
        }

        var range = history.Zip(history.Skip(1), (a, b) => Math.Abs(b - a)).Average();
        var p = range == 0 ? 1 : resolution / (2 * Math.Sqrt(Math.PI) * (range / D2));
        return p < 0.5 ? p : null;
    }

    internal static bool IsOdd(double p, int equal) => equal >= FewestEqual && 60 * (1 - p) * Math.Pow(p, equal - 1) < Odd;
}
