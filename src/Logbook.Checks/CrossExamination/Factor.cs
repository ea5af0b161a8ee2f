using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// The lower triangular factor of a covariance, to bring vectors into units in which all are independent and of size one.
/// Plain arrays: this runs for every hypothesis of every entry.
/// </summary>
internal sealed class Factor
{
    private readonly double[][] _rows;

    private Factor(double[][] rows)
    {
        _rows = rows;
        LogDeterminant = 2 * rows.Select((r, i) => Math.Log(r[i])).Sum();
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

    /// <summary>The vector in independent units; a new array.</summary>
    public double[] Whiten(double[] vector)
    {
        var white = new double[vector.Length];
        for (var i = 0; i < white.Length; i++)
        {
            var row = _rows[i];
            var sum = vector[i];
            for (var k = 0; k < i; k++)
            {
                sum -= row[k] * white[k];
            }

            white[i] = sum / row[i];
        }

        return white;
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
}
