using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Learns from good history what to expect of each row and reading, and how their surprises go together.</summary>
internal static class Fit
{
    /// <summary>Below this many entries only physics speaks.</summary>
    public const int FewestEntries = 150;

    /// <summary>A reading never counts as steadier than this share of its uncertainty.</summary>
    private const double LeastOfU = 0.3;

    /// <summary>
    /// Used until history gives better. Wide, about 4.5 standard deviations: until then nobody knows how far the site's constants
    /// stand off by themselves.
    /// </summary>
    private static readonly double[] Unlearned = [20, 22, 22];

    /// <summary>Without a single entry nothing is known of the rows, and nothing is said.</summary>
    private static readonly double[] Silent = [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity];

    /// <param name="line">What stands in relation to what.</param>
    /// <param name="entries">In time order.</param>
    public static Fitted Learn(Line line, IReadOnlyList<Round> entries)
    {
        var usualChanges = UsualChanges.Learn(line, entries);
        var steadiness = new Steadiness(line, usualChanges);
        var history = entries.Select(steadiness.Heard).ToList();
        var few = history.Count < FewestEntries;
        var forecasts = Enumerable.Range(0, line.Width).Select(p => few ? Forecast.None : Forecast.Learn(Series(line, history, p))).ToList();
        var usual = UsualSensitivities(line, history);
        var surprises = Surprises(line, forecasts, history);
        var scale = Enumerable.Range(0, line.Width).Select(p => p < line.Rows.Count
            ? RowScale(line, usual, p)
            : Math.Max(Bounded(surprises, p), LeastOfU * line.Parameters[p - line.Rows.Count].U)).ToList();
        var scaled = Divided(usual, scale);
        var spread = Covariance.Learn(line, surprises, scale, scaled);
        double[] readings = [.. scale.Skip(line.Rows.Count)];
        var together = line.Readings == 0 ? spread.Quiet : spread.Quiet.SubMatrix(line.Rows.Count, line.Readings, line.Rows.Count, line.Readings);
        return new Fitted
        {
            Line = line,
            Forecasts = forecasts,
            Scale = scale,
            Quiet = spread.Quiet,
            Changed = spread.Changed,
            Hypotheses = Hypothesis.All(line, readings, Moved.Of(line, scaled, readings, together)),
            Thresholds = history.Count == 0 ? Silent : Unlearned,
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

        return Divided(sum, count.Select(c => Math.Max(1.0, c)));
    }

    /// <summary>Each row by its own divisor; no rows are no error.</summary>
    private static Matrix<double> Divided(Matrix<double> rows, IEnumerable<double> by)
    {
        var divided = rows.Clone();
        foreach (var (divisor, k) in by.Take(rows.RowCount).Select((d, k) => (d, k)))
        {
            divided.SetRow(k, rows.Row(k) / divisor);
        }

        return divided;
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
