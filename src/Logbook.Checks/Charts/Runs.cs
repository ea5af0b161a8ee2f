using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>
/// Runs above and below the median: too few mean drift, too many over-correction or invention. Readings at the median are
/// left out.
/// </summary>
internal sealed record Runs(int Count, int Above, int Below, double Z)
{
    public double Expected => (2.0 * Above * Below / (Above + Below)) + 1;

    public double Sigma
    {
        get
        {
            double product = 2.0 * Above * Below, n = Above + Below;
            return Math.Sqrt(product * (product - n) / (n * n * (n - 1)));
        }
    }

    public static Runs Of(IReadOnlyList<double> values)
    {
        var median = values.Median();
        var sides = values.Where(v => v != median).Select(v => v > median).ToList();
        var above = sides.Count(s => s);
        var runs = new Runs(sides.Count == 0 ? 0 : 1 + sides.Skip(1).Zip(sides, (a, b) => a != b).Count(c => c), above, sides.Count - above, 0);
        return above == 0 || above == sides.Count || runs.Sigma == 0 ? runs : runs with { Z = (runs.Count - runs.Expected) / runs.Sigma };
    }
}
