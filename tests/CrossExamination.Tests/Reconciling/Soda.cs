using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Reconciling;

/// <summary>
/// Soda around a line, all readings invented: green liquor in, white liquor out, liquor with mud to washing, wash water, weak
/// wash out, liquor with washed mud.
/// </summary>
internal static class Soda
{
    private static readonly string[] Names = ["F1", "c1", "F2", "c2", "F3", "c3", "F4", "F5", "c5", "F6", "c6"];

    private static readonly double[] Read = [201.2, 120.6, 174.1, 119.5, 25.6, 119.2, 60.5, 76.1, 38.3, 8.3, 10.3];

    private static readonly Vector<double> U = Vector<double>.Build.Dense([2, 1, 2, 1, 1, 1, .8, 1.2, .6, .5, .5]);

    public static Linearised Solve(string wrong, double by) => Linearisation.Solve(Balances, Y(wrong, by), U.PointwiseMultiply(U), Vector<double>.Build.Dense(0));

    public static Reconciled Judge(string wrong, double by)
    {
        var solved = Solve(wrong, by);
        return Reconciliation.Of(solved.A!, solved.A! * solved.X, Y(wrong, by), U);
    }

    /// <summary>The readings whose share is at least 0.7.</summary>
    public static string Name(Reconciled r) => string.Join(' ', Names.Where((_, i) => r.Readings[i].Share >= 0.7));

    private static Vector<double> Y(string wrong, double by) => Vector<double>.Build.Dense([.. Read.Select((v, i) => v + (Names[i] == wrong ? by : 0))]);

    private static Vector<double> Balances(Vector<double> x, Vector<double> u) => Vector<double>.Build.Dense(
    [
        x[0] - x[2] - x[4],
        ((x[0] * x[1]) - (x[2] * x[3]) - (x[4] * x[5])) / 100,
        x[4] + x[6] - x[7] - x[9],
        ((x[4] * x[5]) - (x[7] * x[8]) - (x[9] * x[10])) / 100,
    ]);
}
