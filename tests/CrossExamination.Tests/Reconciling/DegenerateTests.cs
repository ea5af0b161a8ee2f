using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Reconciling;

/// <summary>What cannot be judged gets a plain word, and nothing is named.</summary>
public sealed class DegenerateTests
{
    [Fact]
    public void Readings_in_no_balance_are_not_checked()
    {
        var r = Run([[1, -1, 0]], [10, 10, 99], [1, 1, 1]);

        Assert.Equal([true, true, false], r.Readings.Select(x => x.Checked));
    }

    [Fact]
    public void Two_readings_in_one_balance_tie()
    {
        var r = Run([[1, -1]], [10, 20], [1, 1]);

        Assert.Equal([0, 1], Assert.Single(r.Ties));
        Assert.All(r.Readings, x => Assert.Equal(0.5, x.Share, 10));
    }

    [Fact]
    public void A_balance_with_an_unread_quantity_checks_nothing()
    {
        Assert.Equal("no balance compares these readings", Run([[1, -1, -1]], [10, 6, double.NaN], [1, 1, 1]).Word);
    }

    [Fact]
    public void No_reading_at_all_is_said()
    {
        Assert.Equal("no reading to compare", Run([[1, -1]], [double.NaN, double.PositiveInfinity], [1, 1]).Word);
    }

    [Fact]
    public void Readings_without_an_uncertainty_count_as_not_measured()
    {
        Assert.Equal("no reading to compare", Run([[1, -1]], [10, 20], [0, double.NaN]).Word);
    }

    [Fact]
    public void Balances_that_contradict_each_other_are_said_to()
    {
        var a = Matrix<double>.Build.DenseOfRowArrays([1, -1], [2, -2]);

        var r = Reconciliation.Of(a, Vector<double>.Build.Dense([0, 5.0]), Vector<double>.Build.Dense([10, 10.5]), Vector<double>.Build.Dense([1, 1.0]));

        Assert.Equal(1, r.Degrees);
        Assert.Equal("the balances contradict each other before any reading", r.Word);
    }

    [Fact]
    public void A_balance_without_coefficients_is_no_balance()
    {
        var r = Run([[0, 0], [1, -1]], [10, 11], [1, 1]);

        Assert.Equal(1, r.Degrees);
        Assert.Null(r.Word);
    }

    private static Reconciled Run(double[][] a, double[] y, double[] u)
    {
        var n = Network.Of(a, y, u);
        return Reconciliation.Of(n.A, n.Zero, n.Y, n.U);
    }
}
