using System.Runtime.InteropServices;
using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>The generalized likelihood ratio: how much better residuals are explained when one hypothesis moves them its own way.</summary>
internal sealed record LikelihoodTest(Matrix<double> Inverse)
{
    /// <param name="h">Covariance of the residuals; positive definite.</param>
    public static LikelihoodTest Of(Matrix<double> h) => new(h.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(h.RowCount)));

    /// <summary>Squared length of the residuals in their own spread.</summary>
    public double Distance(Vector<double> residual) => residual.DotProduct(Inverse * residual);

    /// <param name="signature">How the hypothesis moves the residuals, per unit of its size.</param>
    /// <param name="residual">The residuals.</param>
    public Tried Of(Vector<double> signature, Vector<double> residual)
    {
        var weighted = Inverse * signature;
        return new Tried(weighted.DotProduct(residual), signature.DotProduct(weighted));
    }
}

/// <summary>One hypothesis tried.</summary>
/// <param name="Match">N: f' H^-1 r.</param>
/// <param name="Strength">J: f' H^-1 f; zero when the residuals cannot see it.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Tried(double Match, double Strength)
{
    public static Tried operator +(Tried a, Tried b) => new(a.Match + b.Match, a.Strength + b.Strength);

    public double Statistic => Strength > 0 ? Match * Match / Strength : 0;

    /// <summary>With its sign.</summary>
    public double Root => Strength > 0 ? Match / Math.Sqrt(Strength) : 0;

    /// <summary>The most likely size.</summary>
    public double Size => Strength > 0 ? Match / Strength : 0;
}
