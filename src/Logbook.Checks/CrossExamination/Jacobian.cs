using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>How results move with each of their inputs, by moving each a little to both sides.</summary>
internal static class Jacobian
{
    private const double Little = 6e-6;

    public static Matrix<double> Of(Func<Vector<double>, Vector<double>> f, Vector<double> x)
    {
        var columns = new List<Vector<double>>(x.Count);
        for (var j = 0; j < x.Count; j++)
        {
            var step = Little * Math.Max(1, Math.Abs(x[j]));
            var (up, down) = (x.Clone(), x.Clone());
            up[j] += step;
            down[j] -= step;
            columns.Add((f(up) - f(down)) / (2 * step));
        }

        return Matrix<double>.Build.DenseOfColumnVectors(columns);
    }
}
