using CsCheck;
using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Reconciling;

/// <summary>
/// Identities of linear reconciliation (Narasimhan and Jordache 2000, chapters on the global, measurement and likelihood
/// tests; from memory), over random networks of flows.
/// </summary>
public sealed class IdentityTests
{
    private static readonly Gen<Network> AnyNetwork =
        from nodes in Gen.Int[1, 5]
        from streams in Gen.Int[nodes + 1, nodes + 6]
        from ends in Gen.Select(Gen.Int[0, nodes], Gen.Int[0, nodes]).Array[streams]
        from y in Gen.Double[10, 200].Array[streams]
        from u in Gen.Double[0.2, 5].Array[streams]
        select Network.Of([.. Enumerable.Range(1, nodes).Select(k => ends.Select(e => (e.Item1 == k ? 1.0 : 0) - (e.Item2 == k ? 1.0 : 0)).ToArray())], y, u);

    [Fact]
    public void The_global_statistic_is_the_same_from_residuals_and_from_adjustments() => Check((n, r) =>
    {
        var fromAdjustments = r.Readings.Select((x, i) => x.Checked ? Math.Pow((n.Y[i] - x.Adjusted) / n.U[i], 2) : 0).Sum();
        Assert.Equal(r.Statistic, fromAdjustments, 1e-6 * (1 + r.Statistic));
    });

    [Fact]
    public void Adjusted_readings_close_every_balance() => Check((n, r) =>
    {
        var adjusted = Vector<double>.Build.Dense([.. r.Readings.Select((x, i) => x.Checked ? x.Adjusted : n.Y[i])]);
        Assert.All((n.A * adjusted).ToArray(), v => Assert.Equal(0, v, 1e-6));
    });

    [Fact]
    public void The_likelihood_of_a_reading_is_the_square_of_its_measurement_test() => Check((n, r) =>
        Assert.All(r.Readings, x => Assert.Equal(x.Glr, x.Z * x.Z, 1e-6 * (1 + x.Glr))));

    [Fact]
    public void Leaving_a_reading_out_takes_its_likelihood_from_the_global_statistic() => Check((n, r) =>
    {
        for (var i = 0; i < n.Y.Count; i++)
        {
            var y = n.Y.Clone();
            y[i] = double.NaN;
            Assert.Equal(r.Statistic - r.Readings[i].Glr, Reconciliation.Of(n.A, n.Zero, y, n.U).Statistic, 1e-5 * (1 + r.Statistic));
        }
    });

    [Fact]
    public void Tied_readings_have_equal_tests() => Check((n, r) =>
        Assert.All(r.Ties, t => Assert.All(t, i => Assert.Equal(r.Readings[t[0]].Glr, r.Readings[i].Glr, 1e-6 * (1 + r.Statistic)))));

    [Fact]
    public void A_balance_said_twice_changes_nothing() => Check((n, r) =>
    {
        var twice = Reconciliation.Of(n.A.Stack(n.A * 2), Vector<double>.Build.Dense(2 * n.A.RowCount), n.Y, n.U);

        Assert.Equal(r.Degrees, twice.Degrees);
        Assert.Equal(r.Statistic, twice.Statistic, 1e-6 * (1 + r.Statistic));
        Assert.Equal(r.Word, twice.Word);
    });

    private static void Check(Action<Network, Reconciled> holds) =>
        AnyNetwork.Sample(n => holds(n, Reconciliation.Of(n.A, n.Zero, n.Y, n.U)), iter: 300);
}
