using System.Globalization;
using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.Examining;

/// <summary>What was learned, as a record keeps it, and back. Covariances are kept to six digits: more is not known of them.</summary>
internal static class FitForm
{
    /// <param name="line">The site's line.</param>
    /// <param name="fitted">What was learned of it.</param>
    /// <param name="frames">The entries that it was learned from, in the order of their time.</param>
    /// <param name="flagged">The share of them beyond the thresholds.</param>
    public static FitAdopted Of(SiteLine line, Fitted fitted, IReadOnlyList<Frame> frames, double flagged, string why)
    {
        var names = fitted.Line.Rows.Concat(fitted.Line.Parameters.Take(fitted.Line.Readings).Select(p => p.Name));
        return new FitAdopted(
            line.Identity, frames[0].Sheet.At, frames[^1].Sheet.At, fitted.Entries, Short(fitted.LeftOut), Short(flagged), [.. fitted.Thresholds.Select(Short)],
            [.. fitted.Line.Parameters.Select((p, i) => new FittedSubject(p.Name, Short(p.U), Bounded(fitted.UsualChanges.Sizes, i)))],
            [.. names.Select((n, i) => new FittedPlace(n, Short(fitted.Forecasts[i].Mean), fitted.Forecasts[i].Phi, fitted.Forecasts[i].Gain, Short(fitted.Scale[i])))],
            [.. fitted.Hypotheses.Select(h => new FittedHypothesis(
                h.Parameter, [.. h.Effects.Select(e => e.Parameter)], [.. h.Effects.Select(e => Short(e.By))], Short(h.Prior), Short(h.Reach), h.WithMethod) { Chance = [.. h.Chance.Select(Short)] })],
            Rows(fitted.Quiet), Rows(fitted.Changed), Rows(fitted.UsualChanges.Together), why);
    }

    /// <summary>Null when it was learned of another line, or does not hang together.</summary>
    public static Fitted? Read(SiteLine line, FitAdopted fit)
    {
        if (fit.Line != line.Identity || fit.Subjects.Count != line.Subjects.Count || fit.Places.Count != line.Rows.Count + line.Readings)
        {
            return null;
        }

        var parameters = line.With([]).Parameters.Select((p, i) => p with { U = fit.Subjects[i].U });
        var engine = new Line([.. parameters], [.. line.Rows.Select(r => r.Name)]);
        return new Fitted
        {
            Line = engine,
            Forecasts = [.. fit.Places.Select(p => new Forecast(p.Mean, p.Phi, p.Gain))],
            Scale = [.. fit.Places.Select(p => p.Scale)],
            Quiet = Matrix(fit.Quiet),
            Changed = Matrix(fit.Changed),
            Hypotheses = [.. fit.Hypotheses.Select(h => Suspicion(h))],
            Thresholds = fit.Thresholds,
            UsualChanges = new UsualChanges([.. fit.Subjects.Take(engine.Readings).Select(s => s.Change ?? double.PositiveInfinity)], Matrix(fit.Together)),
            Entries = (int)fit.Entries,
            LeftOut = fit.LeftOut,
        };
    }

    private static Hypothesis Suspicion(FittedHypothesis h)
    {
        var hypothesis = new Hypothesis(h.Subject, [.. h.Moves.Zip(h.By)], h.Prior, h.Reach, h.With);
        return h.Chance is { } chance && chance.Count == hypothesis.Chance.Count ? hypothesis with { Chance = chance } : hypothesis;
    }

    private static double? Bounded(IReadOnlyList<double> sizes, int place) => place < sizes.Count && double.IsFinite(sizes[place]) ? Short(sizes[place]) : null;

    private static double Short(double value) => double.Parse(Text(value), CultureInfo.InvariantCulture);

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static string[] Rows(Matrix<double> symmetric) =>
        [.. Enumerable.Range(0, symmetric.RowCount).Select(i => string.Join(' ', Enumerable.Range(0, i + 1).Select(j => Text(symmetric[i, j]))))];

    private static Matrix<double> Matrix(IReadOnlyList<string> rows)
    {
        var matrix = Matrix<double>.Build.Dense(rows.Count, rows.Count);
        for (var i = 0; i < rows.Count; i++)
        {
            var cells = rows[i].Split(' ');
            for (var j = 0; j <= i; j++)
            {
                matrix[i, j] = matrix[j, i] = double.Parse(cells[j], CultureInfo.InvariantCulture);
            }
        }

        return matrix;
    }
}
