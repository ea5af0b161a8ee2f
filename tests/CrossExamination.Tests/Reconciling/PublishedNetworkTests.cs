using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Reconciling;

/// <summary>Sources stand beside each network; figures with more digits than printed were computed independently.</summary>
public sealed class PublishedNetworkTests
{
    [Fact]
    public void Random_errors_alone_pass_and_are_adjusted_as_the_book_does()
    {
        // Narasimhan and Jordache 2000, first example; adjusted values as in the book's table (from memory).
        var r = Run(Network.Exchanger(101.91, 64.45, 34.65, 64.20, 36.44, 98.88));

        Equal([100.22, 64.50, 35.72, 64.50, 35.72, 100.22], r.Readings.Select(x => x.Adjusted), 0.005);
        Assert.Equal(6.4075, r.Statistic, 4);
        Assert.Equal(9.487729, r.Critical, 6);
        Assert.Equal(.170713, r.P, 6);
        Equal([2.0698, -0.0612, -1.3105, -0.3674, 0.8818, -1.6412], r.Readings.Select(x => x.Z), 5e-5);
    }

    [Fact]
    public void A_stream_that_reads_four_too_high_is_found()
    {
        // The same with stream 2 at +4; the book prints 16.674 for the global test (from memory).
        var r = Run(Network.Exchanger(101.91, 68.45, 34.65, 64.20, 36.44, 98.88));

        Assert.Equal(16.674167, r.Statistic, 6);
        Assert.Equal(.00223595, r.P, 8);
        Equal([1.5708, 10.2704, 0.2440, 4.0017, 2.8843, 6.0401], r.Readings.Select(x => x.Glr), 5e-5);
        Equal([1.535, 3.925, -0.605, -2.450, 2.080, -3.010], r.Readings.Select(x => x.Bias), 5e-4);
        Equal([.011, .827, .006, .036, .021, .100], r.Readings.Select(x => x.Share), 5e-4);
        Assert.Equal(2.631038, Criticals.Measurement(6), 6);
        Assert.Equal(6.922362, Criticals.Likelihood(6), 6);
    }

    [Fact]
    public void Without_the_faulty_stream_the_balances_agree()
    {
        var network = Network.Exchanger(101.91, double.NaN, 34.65, 64.20, 36.44, 98.88);

        var r = Run(network);

        Assert.Equal(3, r.Degrees);
        Assert.Equal(6.40375, r.Statistic, 5);
        Assert.False(r.Readings[1].Checked);
        Equal([100.2325, 35.7075, 64.525, 35.7075, 100.2325], r.Readings.Where(x => x.Checked).Select(x => x.Adjusted), 5e-5);
    }

    [Fact]
    public void A_leak_before_a_meter_and_a_bias_of_the_meter_cannot_be_told_apart()
    {
        // The same network with five units lost before meter 6: likelihoods of leaks 16.90 17.14 9.73 32.76.
        var network = Network.Exchanger(101.91, 64.45, 34.65, 64.20, 36.44, 93.88);
        var test = LikelihoodTest.Of(network.A * network.A.Transpose());

        var leaks = Enumerable.Range(0, 4).Select(k => test.Of(Vector<double>.Build.Dense(4, i => i == k ? 1 : 0), network.A * network.Y).Statistic);

        var r = Run(network);
        Assert.Equal(36.474167, r.Statistic, 6);
        Equal([16.90, 17.14, 9.73, 32.76], leaks, 0.005);
        Assert.Equal(32.7601, r.Readings[5].Glr, 4);
        Assert.Equal(-7.01, r.Readings[5].Bias, 2);
    }

    [Fact]
    public void The_reactor_rejects_and_two_streams_stand_out()
    {
        var r = Run(Network.Reactor);

        Assert.Equal(8.454742, r.Statistic, 6);
        Equal([.16757, 4.85945, 1.17297, 3.85405], r.Readings.Select(x => x.Adjusted), 5e-6);
        Equal([1.0768, -2.7370, 2.6238, 0.1318], r.Readings.Select(x => x.Z), 5e-5);
        Assert.Equal(-0.2840, r.Readings[1].Bias, 4);
        Assert.Equal(2.490915, Criticals.Measurement(4), 6);
        Equal([7.2953, 0.9636, 1.5702, 8.4374], r.Readings.Select(x => r.Statistic - x.Glr), 5e-5);
    }

    [Fact]
    public void Linked_flows_of_a_power_plant_are_adjusted_as_printed()
    {
        var r = Run(Network.PowerPlant);

        Equal([44.6918, 44.1188, 44.6385, 44.3818, .524194, 69.997, 10.364, 3.744, 4.391, 18.499], r.Readings.Select(x => x.Adjusted), 5e-4);
        Equal([1.7398, 1.7398, -.4929, -.4929, .1651, -.0584, -.0007, -.0007, -.0007, -.0134], r.Readings.Select(x => x.Z), 5e-5);
        Assert.Equal(3.060222, r.Statistic, 6);
        Assert.Contains(r.Ties, t => t.SequenceEqual([0, 1]));
    }

    [Fact]
    public void The_recycle_network_is_adjusted()
    {
        var r = Run(Network.Recycle);

        Assert.Equal(.06848, r.Statistic, 5);
        Equal([4.90495, 14.79862, 14.79862, 4.81376, 9.98486, 5.07990, 4.90495], r.Readings.Select(x => x.Adjusted), 5e-6);
    }

    [Fact]
    public void Parallel_streams_tie()
    {
        var r = Run(Network.TwelveStreams);

        Assert.Equal(3.891347, r.Statistic, 6);
        Equal([100.58205, 29.80123, 40.70946, 30.07136, 14.99722, 4.96080, 9.84321, 70.51069, 10.14599, 19.92537, 80.65668, 100.58205],
            r.Readings.Select(x => x.Adjusted), 5e-6);
        Assert.Contains(r.Ties, t => t.SequenceEqual([4, 5, 6]));
        Assert.All(new[] { 4, 5, 6 }, i => Assert.Equal(.8836, Math.Abs(r.Readings[i].Z), 4));
    }

    private static Reconciled Run(Network n) => Reconciliation.Of(n.A, n.Zero, n.Y, n.U);

    private static void Equal(double[] expected, IEnumerable<double> actual, double tolerance) =>
        Assert.All(expected.Zip(actual), p => Assert.Equal(p.First, p.Second, tolerance));
}
