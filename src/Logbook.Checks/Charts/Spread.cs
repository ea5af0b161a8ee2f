using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>How widely a series scatters, in the ways that charts need. Values are in time order; none is NaN.</summary>
internal static class Spread
{
    /// <summary>Mean moving range over this is sigma: d2 of span two, as tables print it.</summary>
    public const double D2 = 1.128;

    /// <summary>Mean moving range times this is the upper limit of a moving range of span two.</summary>
    public const double D4 = 3.267;

    /// <summary>MAD times this is sigma for normal readings: one over the 75 % point of the normal distribution.</summary>
    public const double MadToSigma = 1.482602218505602;

    /// <summary>Median absolute deviation from the median.</summary>
    public static double Mad(IReadOnlyList<double> values)
    {
        var median = values.Median();
        return values.Select(v => Math.Abs(v - median)).Median();
    }

    /// <summary>
    /// Sigma from the MAD, never below what the resolution alone scatters: when more than half of the readings are the same
    /// the MAD is zero, and without the floor every other reading would stand out.
    /// </summary>
    public static double RobustSigma(IReadOnlyList<double> values, double resolution) =>
        Math.Max(MadToSigma * Mad(values), resolution / Math.Sqrt(12));

    /// <summary>Moving ranges of span two; a pair across a break (a shutdown, a missed round, a new instrument) forms none.</summary>
    /// <param name="values">Readings in time order.</param>
    /// <param name="breakBefore">For each reading, whether the line before it is broken; null when nowhere.</param>
    public static IReadOnlyList<double> MovingRanges(IReadOnlyList<double> values, IReadOnlyList<bool>? breakBefore = null) =>
        [.. Enumerable.Range(1, Math.Max(0, values.Count - 1)).Where(i => breakBefore is null || !breakBefore[i]).Select(i => Math.Abs(values[i] - values[i - 1]))];

    /// <summary>Correlation of each reading with the one before it; zero for a constant or too short a series.</summary>
    public static double Lag1(IReadOnlyList<double> values)
    {
        if (values.Count < 3)
        {
            return 0;
        }

        var mean = values.Mean();
        var square = values.Sum(v => (v - mean) * (v - mean));
        return square == 0 ? 0 : Enumerable.Range(1, values.Count - 1).Sum(i => (values[i] - mean) * (values[i - 1] - mean)) / square;
    }
}
