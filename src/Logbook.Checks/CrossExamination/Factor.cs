using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>A covariance turned over, to weigh surprises with. Plain arrays: this is used for every hypothesis of every entry.</summary>
internal sealed class Factor
{
    private readonly double[][] _inverse;

    private Factor(double[][] rows)
    {
        LogDeterminant = 2 * rows.Select((r, i) => Math.Log(r[i])).Sum();
        _inverse = Inverse(rows);
    }

    /// <summary>Of the covariance.</summary>
    public double LogDeterminant { get; }

    /// <summary>The factor of the part of a matrix that lies at these places; null when it is not positive definite.</summary>
    public static Factor? Of(Matrix<double> covariance, IReadOnlyList<int> places)
    {
        var rows = new double[places.Count][];
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = new double[i + 1];
            for (var j = 0; j <= i; j++)
            {
                var sum = covariance[places[i], places[j]];
                for (var k = 0; k < j; k++)
                {
                    sum -= rows[i][k] * rows[j][k];
                }

                if (i == j && !(sum > 1e-12))
                {
                    return null;
                }

                rows[i][j] = i == j ? Math.Sqrt(sum) : sum / rows[j][j];
            }
        }

        return new Factor(rows);
    }

    /// <summary>The inverse times a vector; a new array.</summary>
    public double[] Weigh(double[] vector) => [.. _inverse.Select(row => Dot(row, vector))];

    /// <summary>A vector that is zero but at a few indices, times the inverse, times itself.</summary>
    public double Square(ReadOnlySpan<(int Index, double Value)> sparse)
    {
        var sum = 0.0;
        foreach (var (i, a) in sparse)
        {
            var row = _inverse[i];
            foreach (var (j, b) in sparse)
            {
                sum += a * b * row[j];
            }
        }

        return sum;
    }

    public static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    /// <summary>From the lower triangular root: one column after the other, forwards and back.</summary>
    private static double[][] Inverse(double[][] root)
    {
        var n = root.Length;
        var inverse = new double[n][];
        for (var c = 0; c < n; c++)
        {
            var column = inverse[c] = new double[n];
            for (var i = c; i < n; i++)
            {
                var sum = i == c ? 1.0 : 0;
                for (var k = c; k < i; k++)
                {
                    sum -= root[i][k] * column[k];
                }

                column[i] = sum / root[i][i];
            }

            for (var i = n - 1; i >= 0; i--)
            {
                for (var k = i + 1; k < n; k++)
                {
                    column[i] -= root[k][i] * column[k];
                }

                column[i] /= root[i][i];
            }
        }

        return inverse;
    }
}
