using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Which rows of a symmetric non-negative matrix are independent: a Cholesky factorisation that always takes the row with the
/// most left. Redundant balances fall out here instead of breaking the inversion later.
/// </summary>
internal static class Independent
{
    /// <summary>What is left of a row must be more than this share of itself.</summary>
    private const double Least = 1e-9;

    /// <returns>The kept rows, in their order; rows that hold no uncertain reading, or follow from others, are left out.</returns>
    public static int[] Rows(Matrix<double> symmetric)
    {
        var n = symmetric.RowCount;
        var left = Enumerable.Range(0, n).Select(i => symmetric[i, i] > 0 ? 1.0 : 0).ToArray();
        var factor = new List<double[]>();
        var kept = new List<int>();
        while (kept.Count < n)
        {
            var next = Enumerable.Range(0, n).Where(i => !kept.Contains(i)).MaxBy(i => left[i]);
            if (!(left[next] > Least))
            {
                break;
            }

            factor.Add(Column(symmetric, factor, next, left[next]));
            kept.Add(next);
            for (var i = 0; i < n; i++)
            {
                left[i] -= factor[^1][i] * factor[^1][i];
            }
        }

        kept.Sort();
        return [.. kept];
    }

    private static double[] Column(Matrix<double> symmetric, List<double[]> factor, int pivot, double left)
    {
        var column = new double[symmetric.RowCount];
        for (var i = 0; i < column.Length; i++)
        {
            var scale = Math.Sqrt(symmetric[i, i] * symmetric[pivot, pivot]);
            column[i] = scale > 0 ? ((symmetric[i, pivot] / scale) - factor.Sum(f => f[i] * f[pivot])) / Math.Sqrt(left) : 0;
        }

        return column;
    }
}
