using MathNet.Numerics.Distributions;

namespace Logbook.Checks.Charts;

/// <summary>
/// How odd it is that a reading repeats: a count alone says nothing, what matters is the resolution against the spread from
/// reading to reading.
/// </summary>
internal static class Stuck
{
    /// <summary>The chance that two neighbouring normal readings show the same figure.</summary>
    /// <param name="resolution">The step of what is shown.</param>
    /// <param name="sigma">The spread of the readings.</param>
    /// <param name="lag1">How much a reading takes from the one before it.</param>
    public static double ChanceOfRepeat(double resolution, double sigma, double lag1 = 0)
    {
        if (sigma <= 0 || resolution <= 0)
        {
            return sigma <= 0 ? 1 : 0;
        }

        return Cells(resolution / (sigma * Math.Sqrt(1 - Math.Clamp(lag1, 0, 0.999)))).Sum(p => p * p);
    }

    /// <summary>
    /// The chance of some run of at least so many equal ones among n independent normal readings, by the formula for clumps
    /// in each cell of the display.
    /// </summary>
    public static double ChanceOfRun(double resolution, double sigma, int length, int n = 60) =>
        length > n || resolution <= 0 ? 0
        : sigma <= 0 ? 1
        : 1 - Math.Exp(-Cells(resolution / sigma).Sum(p => Math.Pow(p, length) * (((n - length) * (1 - p)) + 1)));

    /// <summary>Readings (from 1) at which the last so many lie within a tolerance of each other.</summary>
    public static IEnumerable<int> FlatLine(IReadOnlyList<double> values, int count, double tolerance = 0) =>
        Enumerable.Range(count, Math.Max(0, values.Count - count + 1)).Where(i =>
        {
            var window = values.Skip(i - count).Take(count).ToList();
            return window.Max() - window.Min() <= tolerance;
        });

    /// <summary>The chance that a round repeats the one before it in every point that moves, from each point's own rate.</summary>
    public static double ChanceOfCopy(IEnumerable<double> repeatRates) => repeatRates.Aggregate(1.0, (p, r) => p * r);

    /// <summary>The probability of each figure that the display can show, in steps of so many sigma; never finer than a thousandth.</summary>
    private static IEnumerable<double> Cells(double step)
    {
        var width = Math.Max(step, 0.001);
        var half = (int)Math.Ceiling(8 / width);
        return Enumerable.Range(-half, (2 * half) + 1).Select(j => Normal.CDF(0, 1, (j + 0.5) * width) - Normal.CDF(0, 1, (j - 0.5) * width));
    }
}
