using MathNet.Numerics.Distributions;

namespace Logbook.Checks.Charts;

/// <summary>
/// Whether a series goes one way: rises less falls over all pairs, against what chance gives. Up to ten readings without
/// ties the chance is exact; beyond that normal, with the correction for ties.
/// </summary>
internal sealed record MannKendall(int S, double Variance, double Z, double P)
{
    private const int Exact = 10;

    /// <param name="values">Readings in time order.</param>
    /// <param name="inflation">At least 1; how many readings count as one because neighbours resemble each other.</param>
    public static MannKendall Of(IReadOnlyList<double> values, double inflation = 1)
    {
        var n = values.Count;
        var s = 0;
        for (var j = 1; j < n; j++)
        {
            for (var i = 0; i < j; i++)
            {
                s += Math.Sign(values[j] - values[i]);
            }
        }

        var ties = values.GroupBy(v => v).Select(g => g.Count()).Where(t => t > 1).ToList();
        var variance = inflation * (Pairs(n) - ties.Sum(Pairs)) / 18.0;
        var z = s == 0 || variance == 0 ? 0 : (s - Math.Sign(s)) / Math.Sqrt(variance);
        var p = n is > 1 and <= Exact && ties.Count == 0 && inflation <= 1
            ? Math.Min(1, 2 * OneSided(n, Math.Abs(s)))
            : 2 * Normal.CDF(0, 1, -Math.Abs(z));
        return new MannKendall(s, variance, z, p);
    }

    /// <summary>The chance that n readings in random order without ties give at least s, which has the parity of n(n-1)/2.</summary>
    public static double OneSided(int n, int s)
    {
        double[] counts = [1];
        for (var k = 2; k <= n; k++)
        {
            var next = new double[counts.Length + k - 1];
            for (var i = 0; i < counts.Length; i++)
            {
                for (var j = 0; j < k; j++)
                {
                    next[i + j] += counts[i];
                }
            }

            counts = next;
        }

        var most = n * (n - 1) / 2;
        return Enumerable.Range(0, counts.Length).Where(rises => (2 * rises) - most >= s).Sum(rises => counts[rises]) / counts.Sum();
    }

    private static double Pairs(int t) => t * (t - 1.0) * ((2 * t) + 5);
}
