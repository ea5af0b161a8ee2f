using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Independent balances over measured readings, and their residual.</summary>
internal sealed record Balances(Matrix<double> A, Vector<double> Residual, LikelihoodTest Glr, bool Contradictory)
{
    public static Balances Of(Projection projected, int[] rows, Vector<double> x, Vector<double> v)
    {
        var all = (projected.A * x) - projected.B;
        var a = projected.A.SelectRows(rows);
        var residual = Vector<double>.Build.Dense([.. rows.Select(r => all[r])]);
        var h = a * Matrix<double>.Build.DiagonalOfDiagonalVector(v) * a.Transpose();
        var test = LikelihoodTest.Of(h);
        return new Balances(a, residual, test, Contradicts(projected, rows, a, v, test));
    }

    /// <summary>A left-out row is the same combination of the kept ones; its right-hand side must be so as well.</summary>
    private static bool Contradicts(Projection projected, int[] rows, Matrix<double> a, Vector<double> v, LikelihoodTest test)
    {
        var b = Vector<double>.Build.Dense([.. rows.Select(r => projected.B[r])]);
        return Enumerable.Range(0, projected.B.Count).Except(rows).Any(k =>
        {
            var row = projected.A.Row(k);
            var implied = (a * row.PointwiseMultiply(v)).DotProduct(test.Inverse * b);
            var size = Math.Abs(projected.B[k]) + Math.Abs(implied);
            return Math.Abs(projected.B[k] - implied) > 1e-6 * Math.Max(size, row.AbsoluteMaximum() * Math.Sqrt(v.Maximum()));
        });
    }
}

internal static class RowSelection
{
    public static Matrix<double> SelectRows(this Matrix<double> matrix, int[] rows) => Matrix<double>.Build.DenseOfRowVectors(rows.Select(matrix.Row));
}
