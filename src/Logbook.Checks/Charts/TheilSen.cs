using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>
/// The line through the medians with the median of all slopes, and the slopes' interval by the rule of ranks with
/// interpolation between neighbouring ones.
/// </summary>
internal sealed record TheilSen(double Slope, double Low, double High, double MedianT, double MedianX)
{
    /// <summary>More readings than this are thinned evenly first: the pairs grow with the square.</summary>
    public const int Most = 1000;

    public double At(double t) => MedianX + (Slope * (t - MedianT));

    /// <summary>True when a level line is among the believable ones.</summary>
    public bool MayBeLevel => Low <= 0 && High >= 0;

    /// <param name="t">Hours, rising.</param>
    /// <param name="x">Readings.</param>
    /// <param name="variance">Of the trend test's S, corrected for ties and for neighbours that resemble each other.</param>
    /// <param name="confidence">Of the interval.</param>
    public static TheilSen Of(IReadOnlyList<double> t, IReadOnlyList<double> x, double variance, double confidence = 0.95)
    {
        var slopes = Slopes(t, x);
        if (slopes.Length == 0)
        {
            return new TheilSen(0, double.NegativeInfinity, double.PositiveInfinity, t.Median(), x.Median());
        }

        var c = Normal.InvCDF(0, 1, 0.5 + (confidence / 2)) * Math.Sqrt(variance);
        return new TheilSen(
            SortedArrayStatistics.Median(slopes),
            Ranked(slopes, (slopes.Length - c) / 2),
            Ranked(slopes, ((slopes.Length + c) / 2) + 1),
            t.Median(),
            x.Median());
    }

    private static double[] Slopes(IReadOnlyList<double> t, IReadOnlyList<double> x)
    {
        var slopes = new List<double>(t.Count * (t.Count - 1) / 2);
        for (var j = 1; j < t.Count; j++)
        {
            for (var i = 0; i < j; i++)
            {
                if (t[j] > t[i])
                {
                    slopes.Add((x[j] - x[i]) / (t[j] - t[i]));
                }
            }
        }

        slopes.Sort();
        return [.. slopes];
    }

    /// <summary>The value at a rank from 1, between neighbours in proportion; beyond the ends there is no bound.</summary>
    private static double Ranked(double[] sorted, double rank)
    {
        if (rank < 1)
        {
            return double.NegativeInfinity;
        }

        if (rank > sorted.Length)
        {
            return double.PositiveInfinity;
        }

        var below = (int)Math.Floor(rank);
        var above = Math.Min(below + 1, sorted.Length);
        return sorted[below - 1] + ((rank - below) * (sorted[above - 1] - sorted[below - 1]));
    }
}
