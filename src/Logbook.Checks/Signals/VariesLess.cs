using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Signals;

/// <summary>
/// Shifts whose readings vary less than usual at several points at once. The spread of a shift's readings is compared with
/// that of other shifts on the same instrument, never with a long-run spread: slow readings are quiet by nature over a short
/// time. A point that is as quiet in the shift before or after is left out, for then it is the plant or the instrument.
/// </summary>
public static class VariesLess
{
    private const int FewestReadings = 6;
    private const int FewestShifts = 20;
    private const int FewestPoints = 3;

    // A single point below this counts as quiet.
    private const double QuietPointLevel = 0.01;

    // Set on simulated operators, so that an honest month is flagged in 1 of 100.
    private const double Level = 0.005;

    /// <summary>The signals among the shifts from <paramref name="from"/> on; earlier ones are history.</summary>
    /// <param name="walks">Walks of one round in time order.</param>
    /// <param name="resolutions">The smallest step of each point, in the order of the values.</param>
    public static IReadOnlyList<QuietSignal> Find(IReadOnlyList<Walk> walks, IReadOnlyList<double> resolutions, DateTimeOffset from)
    {
        var shifts = walks.GroupBy(w => w.Shift, StringComparer.Ordinal).Select(g => g.ToList()).ToList();
        if (shifts.Count < FewestShifts)
        {
            return [];
        }

        var columns = Enumerable.Range(0, resolutions.Count).Select(c => Column(shifts, c, resolutions[c])).Where(c => c is not null).Select(c => c!).ToList();
        var scores = Enumerable.Range(0, shifts.Count).Select(s => Score(columns, s)).ToList();
        var chances = Chances(scores);
        var asked = Enumerable.Range(0, shifts.Count).Where(s => shifts[s][0].At >= from && !double.IsNaN(chances[s])).ToList();
        var adjusted = ManyTests.Adjusted([.. asked.Select(s => chances[s])]);
        return
        [
            .. asked.Select((s, i) => new QuietSignal(shifts[s][0].Shift, shifts[s][0].At, Quiet(columns, s), adjusted[i]))
                .Where(q => q.Adjusted < Level && q.Points.Count >= FewestPoints),
        ];
    }

    /// <summary>One point over all shifts.</summary>
    /// <param name="Chance">For each shift the chance of so small a spread or a smaller one; NaN where there are too few readings.</param>
    private sealed record Series(int Column, double[] Variance, double[] Chance, int[] Readings, double Usual);

    private static Series? Column(List<List<Walk>> shifts, int column, double resolution)
    {
        var values = shifts.ConvertAll(walks => walks.Select(w => w.Values[column]).OfType<double>().ToList());
        // What the display cannot show is no variation: without this floor two equal readings would have no logarithm.
        var floor = resolution * resolution / 12;
        double[] variance = [.. values.ConvertAll(v => v.Count < FewestReadings ? double.NaN : v.Variance() + floor)];
        var known = variance.Where(v => !double.IsNaN(v)).ToList();
        if (known.Count < FewestShifts || known.Median() < 4 * floor)
        {
            return null; // too little history, or a point that hardly moves
        }

        var freedom = Freedom([.. known.Select(v => Math.Log(v))]);
        var usual = known.Median() / (ChiSquared.InvCDF(freedom, 0.5) / freedom);
        double[] chance = [.. variance.Select(v => double.IsNaN(v) ? double.NaN : ChiSquared.CDF(freedom, freedom * v / usual))];
        return new Series(column, variance, chance, [.. values.ConvertAll(v => v.Count)], known.Median());
    }

    /// <summary>
    /// How many independent readings a shift's spread is worth, from how the logarithms of the spreads scatter (robustly): the
    /// variance of the logarithm of a chi-squared variable with f degrees is the trigamma function of f/2.
    /// </summary>
    private static double Freedom(IReadOnlyList<double> logs)
    {
        var median = logs.Median();
        var sigma = Charts.Spread.MadToSigma * logs.Select(l => Math.Abs(l - median)).Median();
        var target = Math.Max(sigma * sigma, 0.02);
        return Math.Clamp(FindRoots.OfFunction(f => Trigamma(f / 2) - target, 0.2, 400), 0.5, 300);
    }

    private static double Trigamma(double x)
    {
        var sum = 0.0;
        for (; x < 6; x++)
        {
            sum += 1 / (x * x);
        }

        var y = 1 / (x * x);
        return sum + (1 / x) + (y / 2) + (y / x * ((1.0 / 6) - (y * ((1.0 / 30) - (y / 42)))));
    }

    private static double Score(List<Series> columns, int shift)
    {
        var chances = columns.Where(c => !double.IsNaN(c.Chance[shift]) && !NeighbourIsQuiet(c, shift)).Select(c => c.Chance[shift]).ToList();
        return chances.Count < FewestPoints ? double.NaN : chances.Average(p => -2 * Math.Log(Math.Max(p, 1e-12)));
    }

    private static bool NeighbourIsQuiet(Series column, int shift) =>
        new[] { shift - 1, shift + 1 }.Any(s => s >= 0 && s < column.Chance.Length && column.Chance[s] < QuietPointLevel);

    /// <summary>
    /// The chance of a shift's score. Points of one line move together, so the sum of their scores scatters more than that of
    /// separate ones: mean and scatter are measured over the shifts, and a scaled chi-squared distribution has both (Brown 1975).
    /// </summary>
    private static double[] Chances(IReadOnlyList<double> scores)
    {
        var known = scores.Where(s => !double.IsNaN(s)).Order().ToList();
        if (known.Count < FewestShifts)
        {
            return [.. scores.Select(_ => double.NaN)];
        }

        // Median and lower half alone: what stands out above must not teach what is usual.
        var median = known.Median();
        var sigma = (median - known.Quantile(0.16)) * 1.15;
        var mean = median + (sigma / 6);
        var scale = Math.Max(sigma * sigma / (2 * mean), 1e-9);
        return [.. scores.Select(s => double.IsNaN(s) ? double.NaN : 1 - ChiSquared.CDF(mean / scale, s / scale))];
    }

    private static IReadOnlyList<QuietPoint> Quiet(List<Series> columns, int shift) =>
    [
        .. columns.Where(c => c.Chance[shift] < QuietPointLevel && !NeighbourIsQuiet(c, shift))
            .Select(c => new QuietPoint(c.Column, Math.Sqrt(c.Variance[shift]), Math.Sqrt(c.Usual), c.Readings[shift])),
    ];
}
