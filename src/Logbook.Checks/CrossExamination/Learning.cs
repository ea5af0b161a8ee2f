using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Expectations, spreads and covariances from one history.</summary>
internal sealed class Learning(Line line, List<Round> history, Matrix<double> usual)
{
    /// <summary>What is expected hangs on how errors go together, and that on what is expected: learned so many times in turn.</summary>
    private const int Repeats = 2;

    private readonly bool _few = history.Count < Fit.FewestEntries;

    /// <summary>Usual sensitivities of the rows, each row in its own uncertainty.</summary>
    public Matrix<double> Scaled(IReadOnlyList<double> scale) => usual.RowsBy(scale);

    public Fitted Of()
    {
        var fitted = From(history.ConvertAll(r => Enumerable.Range(0, line.Width).Select(p => Places.Value(line, r, p)).ToArray()));
        for (var round = 0; round < Repeats && !_few; round++)
        {
            fitted = From(Beyond(fitted));
        }

        return fitted;
    }

    /// <param name="values">For each entry what it has at each place beyond what errors let expect; NaN when nothing.</param>
    private Fitted From(List<double[]> values)
    {
        var forecasts = Enumerable.Range(0, line.Width).Select(p => _few ? Forecast.None : Forecast.Learn(Series(values, p))).ToList();
        var surprises = Surprises(forecasts, values);
        var scale = Enumerable.Range(0, line.Width).Select(p => p < line.Rows.Count
            ? RowScale(p)
            : Math.Max(Bounded(surprises, p), Fit.LeastOfU * line.Parameters[p - line.Rows.Count].U)).ToList();
        var spread = Covariance.Learn(line, surprises, scale, Scaled(scale));
        return new Fitted
        {
            Line = line,
            Forecasts = forecasts,
            Scale = scale,
            Quiet = spread.Quiet,
            Changed = spread.Changed,
            Thresholds = history.Count == 0 ? Fit.Silent : Fit.Unlearned,
            UsualChanges = new UsualChanges([], Matrix<double>.Build.Dense(0, 0)),
            Entries = history.Count,
            LeftOut = spread.LeftOut,
        };
    }

    /// <summary>What each entry had beyond the errors that those before let expect in it.</summary>
    private List<double[]> Beyond(Fitted fitted)
    {
        var expected = new Expected(fitted, new Factors(fitted.Quiet));
        return history.ConvertAll(round =>
        {
            double[] values = [.. Enumerable.Range(0, line.Width).Select(p => expected.Beyond(round, p))];
            expected.Take(round);
            return values;
        });
    }

    private List<(double Hours, double Value)> Series(List<double[]> values, int place) =>
        [.. history.Select((r, t) => (r.Hours, Value: values[t][place])).Where(s => double.IsFinite(s.Value))];

    /// <returns>For each entry a vector of surprises in their own units; NaN where there is none.</returns>
    private List<double[]> Surprises(List<Forecast> forecasts, List<double[]> values)
    {
        var standing = new Standing(forecasts);
        return
        [
            .. history.Select((round, t) => Enumerable.Range(0, line.Width).Select(p =>
                double.IsFinite(values[t][p]) ? standing.Take(p, values[t][p] - forecasts[p].Mean, round.Hours) : double.NaN).ToArray()),
        ];
    }

    private double RowScale(int row)
    {
        var variance = line.Parameters.Select((p, i) => Math.Pow(usual[row, i] * p.U, 2)).Sum();
        return variance > 0 ? Math.Sqrt(variance) : 1;
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
