using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Balances that are not linear, as a flow times a strength: linearised again and again about the last estimate, always for
/// the smallest distance to what was read. Fails in words rather than giving the last value.
/// </summary>
internal static class Linearisation
{
    private const int MostSteps = 50;
    private const double Settled = 1e-9;

    /// <param name="balances">What must be zero, at measured x and unmeasured u.</param>
    /// <param name="y">The readings.</param>
    /// <param name="v">Their variances.</param>
    /// <param name="start">First guess of what is not measured; empty when all is.</param>
    public static Linearised Solve(Func<Vector<double>, Vector<double>, Vector<double>> balances, Vector<double> y, Vector<double> v, Vector<double> start)
    {
        var (x, u) = (y, start);
        for (var step = 1; step <= MostSteps; step++)
        {
            var c = balances(x, u);
            var a = Jacobian.Of(p => balances(p, u), x);
            var b = start.Count == 0 ? null : Jacobian.Of(p => balances(x, p), u);
            if (!c.All(double.IsFinite) || !a.Enumerate().All(double.IsFinite) || b?.Enumerate().All(double.IsFinite) == false)
            {
                return Linearised.Failed("the balances give no number here");
            }

            var (nextX, nextU) = Step(c, a, b, x, u, y, v);
            var moved = Math.Max(Relative(nextX, x), Relative(nextU, u));
            (x, u) = (nextX, nextU);
            if (moved < Settled)
            {
                return new Linearised(x, u, a, Distance(y - x, v), step, null);
            }
        }

        return Linearised.Failed("the balances do not settle");
    }

    private static (Vector<double> X, Vector<double> U) Step(
        Vector<double> c, Matrix<double> a, Matrix<double>? b, Vector<double> x, Vector<double> u, Vector<double> y, Vector<double> v)
    {
        var p = b is null ? Matrix<double>.Build.DenseIdentity(c.Count) : Projection.LeftNull(b);
        var g = p * a;
        var h = g * Matrix<double>.Build.DiagonalOfDiagonalVector(v) * g.Transpose();
        var rows = Independent.Rows(h);
        var nextX = y;
        if (rows.Length > 0)
        {
            var kept = g.SelectRows(rows);
            var e = p * (c + (a * (y - x)));
            var test = LikelihoodTest.Of(kept * Matrix<double>.Build.DiagonalOfDiagonalVector(v) * kept.Transpose());
            nextX = y - v.PointwiseMultiply(kept.TransposeThisAndMultiply(test.Inverse * Vector<double>.Build.Dense([.. rows.Select(r => e[r])])));
        }

        return (nextX, b is null ? u : u - (b.PseudoInverse() * (c + (a * (nextX - x)))));
    }

    private static double Relative(Vector<double> next, Vector<double> last) =>
        next.Count == 0 ? 0 : (next - last).Zip(last, (d, l) => Math.Abs(d) / Math.Max(1, Math.Abs(l))).Max();

    private static double Distance(Vector<double> adjustment, Vector<double> v) => adjustment.PointwiseMultiply(adjustment).PointwiseDivide(v).Sum();
}

/// <summary>What linearising came to.</summary>
/// <param name="X">Adjusted readings.</param>
/// <param name="U">What was not measured.</param>
/// <param name="A">The balances' Jacobian at the solution.</param>
/// <param name="Statistic">Squared adjustments over variances.</param>
/// <param name="Steps">How many it took.</param>
/// <param name="Word">Why there is no solution; null when there is.</param>
internal sealed record Linearised(Vector<double> X, Vector<double> U, Matrix<double>? A, double Statistic, int Steps, string? Word)
{
    public static Linearised Failed(string word) => new(Vector<double>.Build.Dense(1), Vector<double>.Build.Dense(1), null, double.NaN, 0, word);
}
