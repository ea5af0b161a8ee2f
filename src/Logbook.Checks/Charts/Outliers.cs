using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>Readings that do not belong to their series, by three published tests.</summary>
internal static class Outliers
{
    /// <summary>Below this many readings the many-outlier test is not to be trusted.</summary>
    public const int FewestForMany = 15;

    /// <summary>The largest distance from the mean in standard deviations, and the reading (from 0) that has it.</summary>
    public static (double G, int Index) Grubbs(IReadOnlyList<double> values)
    {
        var (mean, sd) = values.MeanStandardDeviation();
        var index = Enumerable.Range(0, values.Count).MaxBy(i => Math.Abs(values[i] - mean));
        return (sd > 0 ? Math.Abs(values[index] - mean) / sd : 0, index);
    }

    /// <summary>What <see cref="Grubbs"/> must exceed.</summary>
    public static double GrubbsCritical(int n, double alpha = 0.05, bool twoSided = true)
    {
        var t = StudentT.InvCDF(0, 1, n - 2, 1 - (alpha / (twoSided ? 2 * n : n)));
        return (n - 1) / Math.Sqrt(n) * Math.Sqrt(t * t / (n - 2 + (t * t)));
    }

    /// <summary>
    /// Generalized extreme studentized deviates: the farthest reading is taken away again and again; the outliers are those up
    /// to the last step that exceeds its critical value, even when earlier steps do not.
    /// </summary>
    public static IReadOnlyList<RosnerStep> Rosner(IReadOnlyList<double> values, int most, double alpha = 0.05)
    {
        var left = Enumerable.Range(0, values.Count).ToList();
        var steps = new List<RosnerStep>();
        for (var i = 1; i <= most && left.Count > 2; i++)
        {
            var (r, at) = Grubbs([.. left.Select(j => values[j])]);
            steps.Add(new RosnerStep(left[at], r, RosnerCritical(values.Count, i, alpha)));
            left.RemoveAt(at);
        }

        return steps;
    }

    /// <summary>How many of the steps are outliers.</summary>
    public static int Count(IReadOnlyList<RosnerStep> steps) =>
        Enumerable.Range(1, steps.Count).Where(i => steps[i - 1].R > steps[i - 1].Critical).LastOrDefault();

    /// <summary>
    /// Readings (from 0) farther than <paramref name="sigmas"/> from the median of the window around them; the spread never
    /// counts as less than the resolution alone gives.
    /// </summary>
    public static IReadOnlyList<(int Index, double Median)> Hampel(IReadOnlyList<double> values, int half = 3, double sigmas = 3, double resolution = 0)
    {
        var found = new List<(int, double)>();
        for (var i = 0; i < values.Count; i++)
        {
            var from = Math.Max(0, i - half);
            double[] window = [.. values.Skip(from).Take(Math.Min(values.Count, i + half + 1) - from)];
            var median = window.Median();
            if (Math.Abs(values[i] - median) > sigmas * Spread.RobustSigma(window, resolution))
            {
                found.Add((i, median));
            }
        }

        return found;
    }

    private static double RosnerCritical(int n, int i, double alpha)
    {
        var t = StudentT.InvCDF(0, 1, n - i - 1, 1 - (alpha / (2 * (n - i + 1))));
        return (n - i) * t / Math.Sqrt((n - i - 1 + (t * t)) * (n - i + 1));
    }
}

/// <summary>One step of the many-outlier test: the reading (from 0), its distance in standard deviations, what it must exceed.</summary>
internal sealed record RosnerStep(int Index, double R, double Critical);
