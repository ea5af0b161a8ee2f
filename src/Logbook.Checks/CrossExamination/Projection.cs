using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Balances that hold no quantity that nobody measured: those are eliminated, and rows that held only them vanish.</summary>
internal sealed record Projection(Matrix<double> A, Vector<double> B)
{
    private const double Zero = 1e-10;

    public static Projection Of(Matrix<double> a, Vector<double> b, int[] measured)
    {
        var known = Matrix<double>.Build.DenseOfColumnVectors(measured.Select(a.Column));
        var unknown = Enumerable.Range(0, a.ColumnCount).Except(measured).ToArray();
        return unknown.Length == 0 ? new Projection(known, b) : Of(known, b, Matrix<double>.Build.DenseOfColumnVectors(unknown.Select(a.Column)));
    }

    /// <param name="known">Coefficients of what is measured.</param>
    /// <param name="b">Right-hand sides.</param>
    /// <param name="unknown">Coefficients of what is not.</param>
    public static Projection Of(Matrix<double> known, Vector<double> b, Matrix<double> unknown)
    {
        var p = LeftNull(unknown);
        return p.RowCount == 0
            ? new Projection(Matrix<double>.Build.Dense(1, known.ColumnCount), Vector<double>.Build.Dense(1))
            : new Projection((p * known).Map(Tidy(known)), p * b);
    }

    /// <summary>Rows P, orthogonal to each other, with P B = 0; none when the unknowns take every row.</summary>
    public static Matrix<double> LeftNull(Matrix<double> b)
    {
        var svd = b.Svd();
        var rank = svd.S.Count(s => s > Zero * Math.Max(svd.S[0], double.Epsilon));
        var rows = b.RowCount - rank;
        return rows == 0 ? Matrix<double>.Build.Dense(1, b.RowCount) : svd.U.SubMatrix(0, b.RowCount, rank, rows).Transpose();
    }

    /// <summary>What is left of a cancelled coefficient by rounding is no coefficient.</summary>
    private static Func<double, double> Tidy(Matrix<double> known)
    {
        var least = 1e-13 * known.Enumerate().Select(Math.Abs).Max();
        return v => Math.Abs(v) < least ? 0 : v;
    }
}
