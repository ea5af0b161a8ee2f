using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>A symmetric matrix with no eigenvalue below a floor: estimates pair by pair need not be a covariance.</summary>
internal static class Positive
{
    public static Matrix<double> Of(Matrix<double> matrix, double least)
    {
        if (matrix.RowCount == 0)
        {
            return matrix;
        }

        var symmetric = (matrix + matrix.Transpose()) / 2;
        var evd = symmetric.Evd(Symmetricity.Symmetric);
        var values = evd.EigenValues.Map(v => Math.Max(v.Real, least));
        return evd.EigenVectors * Matrix<double>.Build.DiagonalOfDiagonalVector(values.Map(v => v)) * evd.EigenVectors.Transpose();
    }
}
