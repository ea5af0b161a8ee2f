using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Learns from good history what to expect of each row and reading, and how their surprises go together.</summary>
internal static class Fit
{
    /// <summary>Below this many entries only physics speaks.</summary>
    public const int FewestEntries = 150;

    /// <summary>A reading never counts as steadier than this share of its uncertainty.</summary>
    private const double LeastOfU = 0.3;

    /// <summary>One chi-squared value with one degree of freedom in a thousand is larger; used until history gives better.</summary>
    private static readonly double[] Unlearned = [10.8, 12.5, 12.5];

    /// <param name="line">What stands in relation to what.</param>
    /// <param name="entries">In time order.</param>
    public static Fitted Learn(Line line, IReadOnlyList<Round> entries)
    {
        var usualChanges = UsualChanges.Learn(line, entries);
        var steadiness = new Steadiness(line, usualChanges);
        var history = entries.Select(steadiness.Heard).ToList();
        var forecasts = Enumerable.Range(0, line.Width).Select(p => Forecast.Learn(Series(line, history, p))).ToList();
        var usual = UsualSensitivities(line, history);
        var surprises = Surprises(line, forecasts, history);
        var scale = Enumerable.Range(0, line.Width).Select(p => p < line.Rows.Count
            ? RowScale(line, usual, p)
            : Math.Max(Bounded(surprises, p), LeastOfU * line.Parameters[p - line.Rows.Count].U)).ToList();
        var scaled = usual.MapIndexed((k, _, v) => v / scale[k]);
        var spread = Covariance.Learn(line, surprises, scale, scaled);
        return new Fitted
        {
            Line = line,
            Forecasts = forecasts,
            Scale = scale,
            Quiet = spread.Quiet,
            Changed = spread.Changed,
            Hypotheses = Hypothesis.All(line, Moved.Of(line, scaled, [.. scale.Skip(line.Rows.Count)])),
            Thresholds = Unlearned,
            UsualChanges = usualChanges,
            Entries = history.Count,
            LeftOut = spread.LeftOut,
        };
    }

    private static List<(double Hours, double Value)> Series(Line line, IReadOnlyList<Round> history, int place) =>
        [.. history.Select(r => (r.Hours, Value: Places.Value(line, r, place))).Where(s => double.IsFinite(s.Value))];

    private static Matrix<double> UsualSensitivities(Line line, IReadOnlyList<Round> history)
    {
        var sum = Matrix<double>.Build.Dense(line.Rows.Count, line.Parameters.Count);
        var count = new int[line.Rows.Count];
        foreach (var round in history)
        {
            for (var k = 0; k < line.Rows.Count; k++)
            {
                if (round.Rows[k] is { } row)
                {
                    count[k]++;
                    foreach (var s in row.Sensitivities)
                    {
                        sum[k, s.Parameter] += s.Slope;
                    }
                }
            }
        }

        return sum.MapIndexed((k, _, v) => count[k] == 0 ? 0 : v / count[k]);
    }

    private static double RowScale(Line line, Matrix<double> usual, int row)
    {
        var variance = line.Parameters.Select((p, i) => Math.Pow(usual[row, i] * p.U, 2)).Sum();
        return variance > 0 ? Math.Sqrt(variance) : 1;
    }

    /// <returns>For each entry a vector of surprises in their own units; NaN where there is none.</returns>
    private static List<double[]> Surprises(Line line, IReadOnlyList<Forecast> forecasts, IReadOnlyList<Round> history)
    {
        var standing = new Standing(forecasts);
        return
        [
            .. history.Select(round => Enumerable.Range(0, line.Width).Select(p =>
            {
                var value = Places.Value(line, round, p);
                return double.IsFinite(value) ? standing.Surprise(p, value, round.Hours) : double.NaN;
            }).ToArray()),
        ];
    }

    /// <summary>Root mean square, each surprise bounded at three spreads.</summary>
    private static double Bounded(List<double[]> surprises, int place)
    {
        double[] values = [.. surprises.Select(s => s[place]).Where(double.IsFinite)];
        if (values.Length == 0)
        {
            return 0;
        }

        var bound = 3 * Robust.Sigma(values);
        return Math.Sqrt(values.Average(v => Math.Min(v * v, bound * bound)));
    }
}
