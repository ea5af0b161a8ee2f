using Logbook.Checks.CrossExamination;
using MathNet.Numerics.LinearAlgebra;

namespace CrossExamination.Tests.Reconciling;

public sealed class LinearisationTests
{
    private static readonly Vector<double> One = Vector<double>.Build.Dense(5, 1);

    [Fact]
    public void Five_readings_and_three_unknowns_of_a_published_problem_are_solved()
    {
        // Pai and Fisher 1988: published 4.5124 5.5819 1.9260 1.4560 4.8545 and 11.070 .61467 2.0504 (from memory); the longer
        // figures computed twice by independent methods.
        var solved = Linearisation.Solve(PaiFisher, Vector(4.4, 5.5, 1.7, 1.6, 5.0), One, Vector(11, 0.7, 1.8));

        Assert.Null(solved.Word);
        Equal([4.51243001, 5.58186754, 1.92595722, 1.45599905, 4.85453205], solved.X);
        Equal([11.07032365, .61466867, 2.05035784], solved.U);
        Assert.Equal(.1122966657, solved.Statistic, 8);
    }

    [Theory] // A soda balance with invented readings; expected figures computed independently.
    [InlineData("", 0, 2.1111)]
    [InlineData("F2", 12, 14.4463)]
    [InlineData("c2", -7, 30.912)]
    [InlineData("c5", 6, 27.2823)]
    [InlineData("F5", 9, 17.6701)]
    [InlineData("c3", -9, 11.7434)]
    public void A_soda_balance_sees_a_wrong_reading(string wrong, double by, double statistic)
    {
        var solved = Soda.Solve(wrong, by);

        Assert.Equal(statistic, solved.Statistic, 5e-4 * Math.Max(1, statistic / 10));
    }

    [Fact]
    public void The_soda_balance_without_a_fault_gives_the_independent_estimates()
    {
        var solved = Soda.Solve("", 0);

        Equal([200.3470, 119.9644, 174.9541, 120.0550, 25.3929, 119.3402, 60.0527, 76.9769, 38.2349, 8.4687, 10.2950], solved.X, 5e-5);
    }

    [Fact]
    public void A_flow_and_a_flow_behind_one_splitter_cannot_be_told_apart()
    {
        var r = Soda.Judge("F2", 12);

        Assert.Equal(-3.5661, r.Readings[0].Z, 3);
        Assert.Equal(3.5656, r.Readings[2].Z, 3);
        Assert.Equal(.494, r.Readings[0].Share, 2);
        Assert.Equal(.493, r.Readings[2].Share, 2);
        Assert.Equal("", Soda.Name(r));
    }

    [Fact]
    public void A_balance_that_gives_no_number_says_so()
    {
        var solved = Linearisation.Solve((x, _) => Vector(Math.Sqrt(x[0])), Vector(-4), Vector(1), Vector<double>.Build.Dense(0));

        Assert.Equal("the balances give no number here", solved.Word);
    }

    [Fact]
    public void Balances_that_never_meet_say_so()
    {
        var solved = Linearisation.Solve((x, _) => Vector((x[0] * x[0]) + 1), Vector(0.7), Vector(1), Vector<double>.Build.Dense(0));

        Assert.Equal("the balances do not settle", solved.Word);
    }

    private static Vector<double> PaiFisher(Vector<double> x, Vector<double> u) => Vector(
        (x[0] * x[0] / 2) - (.7 * x[1]) + (x[2] * u[0]) + (x[1] * x[1] * u[0] * u[1]) + (2 * x[2] * u[2] * u[2]) - 255.8,
        x[0] - (2 * x[1]) + (3 * x[0] * x[2]) - (2 * x[1] * u[0]) - (x[1] * u[1] * u[2]) + 111.2,
        (x[2] * u[0]) - x[0] + (3 * x[1]) + (x[0] * u[1]) - (x[2] * Math.Sqrt(u[2])) - 33.57,
        x[3] - x[0] - (x[2] * x[2]) + u[1] + (3 * u[2]),
        x[4] - (2 * x[2] * u[1] * u[2]),
        (2 * x[0]) + (x[1] * x[2] * u[0]) + u[1] - u[2] - 126.6);

    private static Vector<double> Vector(params double[] values) => Vector<double>.Build.Dense(values);

    private static void Equal(double[] expected, IEnumerable<double> actual, double tolerance = 1e-7) =>
        Assert.All(expected.Zip(actual), p => Assert.Equal(p.First, p.Second, tolerance));
}
