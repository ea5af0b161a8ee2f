using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Reconciling;

/// <summary>Published networks: coefficients, readings and standard uncertainties.</summary>
internal sealed record Network(Matrix<double> A, Vector<double> Y, Vector<double> U)
{
    /// <summary>Heat exchanger with bypass, Narasimhan and Jordache 2000, first example.</summary>
    public static Network Exchanger(params double[] y) => Of(
        [
            [1, -1, -1, 0, 0, 0],
            [0, 1, 0, -1, 0, 0],
            [0, 0, 1, 0, -1, 0],
            [0, 0, 0, 1, 1, -1],
        ], y, [1, 1, 1, 1, 1, 1]);

    /// <summary>Reactor of Ripps 1965; data from memory, the true values .1739 5.0435 1.2175 4.00 satisfy the balances exactly.</summary>
    public static Network Reactor { get; } = Of(
        [
            [.1, .6, -.2, -.7],
            [.8, .1, -.2, -.1],
            [.1, .3, -.6, -.2],
        ], [.1858, 4.7935, 1.2295, 3.8800], [Math.Sqrt(.000289), Math.Sqrt(.0025), Math.Sqrt(.000576), Math.Sqrt(.04)]);

    /// <summary>Rosenberg, Mah and Iordache 1987.</summary>
    public static Network Recycle { get; } = Of(
        [
            [1, -1, 0, 1, 0, 1, 0],
            [0, 1, -1, 0, 0, 0, 0],
            [0, 0, 1, -1, -1, 0, 0],
            [0, 0, 0, 0, 1, -1, -1],
        ], [5.026, 14.722, 14.721, 4.968, 10.088, 5.131, 4.835], [1, 1, 1, 1, 1, 1, 1]);

    /// <summary>Mitsas 2010: twelve streams, six nodes.</summary>
    public static Network TwelveStreams { get; } = Of(
        [.. new int[][] { [1, -2, -3, -4], [2, -5, -6, -7], [3, 5, 6, 7, -8], [4, -9, -10], [8, 9, -11], [10, 11, -12] }.Select(r => Streams(r, 12))],
        [100.49, 29.46, 40.41, 30.05, 15.17, 4.98, 9.92, 70.68, 10.03, 19.82, 81.06, 101.57],
        [1, .3, .4, .3, .3, .1, .2, .7, .3, .4, .8, 1]);

    /// <summary>
    /// Ten linked mass flows of a power plant, a published example of the guideline VDI 2048: FDKEL, FDKELL, SPL, SPLL, V, HK,
    /// A7, A6, A5, HDNK. The printed 95 % half-widths are 1.96 standard uncertainties.
    /// </summary>
    public static Network PowerPlant { get; } = Of(
        [
            [1, 1, -1, -1, .4, 0, 0, 0, 0, 0],
            [0, 0, 1, 1, -1, -1, -1, -1, -1, 0],
            [0, 0, 0, 0, 0, 0, 1, 1, 1, -1],
        ],
        [46.241, 45.668, 44.575, 44.319, .525, 69.978, 10.364, 3.744, 4.391, 18.498],
        [.. new[] { 2.5, 2.5, .535, .532, .105, .854, .168, .058, .058, .205 }.Select(w => w / 1.96)]);

    public Vector<double> Zero => Vector<double>.Build.Dense(A.RowCount);

    public static Network Of(double[][] a, double[] y, double[] u) =>
        new(Matrix<double>.Build.DenseOfRowArrays(a), Vector<double>.Build.Dense(y), Vector<double>.Build.Dense(u));

    private static double[] Streams(int[] signed, int count)
    {
        var row = new double[count];
        foreach (var s in signed)
        {
            row[Math.Abs(s) - 1] = Math.Sign(s);
        }

        return row;
    }
}
