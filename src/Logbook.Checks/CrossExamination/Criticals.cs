using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Logbook.Checks.CrossExamination;

/// <summary>What tests over several readings must exceed, five in a hundred for all of them together.</summary>
internal static class Criticals
{
    private const double Alpha = 0.05;

    /// <summary>For the largest of n standard normal values.</summary>
    public static double Measurement(int n) => Normal.InvCDF(0, 1, 1 - (Single(n) / 2));

    /// <summary>For the largest of n likelihood ratios.</summary>
    public static double Likelihood(int n) => ChiSquared.InvCDF(1, 1 - Single(n));

    private static double Single(int n) => 1 - Math.Pow(1 - Alpha, 1.0 / n);
}

/// <summary>Upper tails without the loss of digits of one minus the lower one.</summary>
internal static class Tails
{
    public static double ChiSquared(double x, int degrees) => x <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(degrees / 2.0, x / 2);
}
