using Logbook.Checks.Charts;

namespace CrossExamination.Tests.Charts;

public sealed class OutlierTests
{
    /// <summary>Rosner 1983, as in the NIST/SEMATECH e-Handbook, section 1.3.5.17.3.</summary>
    private static readonly double[] Rosner1983 =
    [
        -0.25, 0.68, 0.94, 1.15, 1.20, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.70, 1.76, 1.77, 1.81, 1.91,
        1.94, 1.96, 1.99, 2.06, 2.09, 2.10, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.40, 2.47, 2.54, 2.62, 2.64, 2.90, 2.92, 2.92, 2.93,
        3.21, 3.26, 3.30, 3.59, 3.68, 4.30, 4.64, 5.34, 5.42, 6.01,
    ];

    [Fact]
    public void Grubbs_is_that_of_the_handbook()
    {
        // NIST/SEMATECH e-Handbook, section 1.3.5.17.1: G = 2.4687646, one-sided critical 2.032.
        var (g, index) = Outliers.Grubbs([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]);

        Assert.Equal(2.46876461121245, g, 12);
        Assert.Equal(7, index);
        Assert.Equal(2.031652, Outliers.GrubbsCritical(8, twoSided: false), 6);
    }

    [Theory] // Computed independently from the published formula.
    [InlineData(3, 1.1543, 1.1547)]
    [InlineData(8, 2.1266, 2.2744)]
    [InlineData(20, 2.7082, 3.0008)]
    [InlineData(100, 3.3841, 3.7540)]
    public void Grubbs_critical_values_are_the_tabled_ones(int n, double five, double one)
    {
        Assert.Equal(five, Outliers.GrubbsCritical(n), 4);
        Assert.Equal(one, Outliers.GrubbsCritical(n, 0.01), 4);
    }

    [Fact]
    public void Rosners_example_has_three_outliers_though_the_first_two_steps_do_not_exceed()
    {
        // The printed figures are cut, not rounded.
        var steps = Outliers.Rosner(Rosner1983, 10);

        double[] r = [3.118, 2.942, 3.179, 2.810, 2.815, 2.848, 2.279, 2.310, 2.101, 2.067];
        double[] critical = [3.158, 3.151, 3.143, 3.136, 3.128, 3.120, 3.111, 3.103, 3.094, 3.085];
        Assert.All(r.Zip(steps), p => Assert.Equal(p.First, p.Second.R, 0.001));
        Assert.All(critical.Zip(steps), p => Assert.Equal(p.First, p.Second.Critical, 0.001));
        Assert.Equal(3, Outliers.Count(steps));
        Assert.Equal([6.01, 5.42, 5.34], steps.Take(3).Select(s => Rosner1983[s.Index]));
    }

    [Fact]
    public void The_median_deviation_does_not_mind_one_wild_reading()
    {
        // Invented data; the constant is 1 / 0.6744898 (NIST/SEMATECH e-Handbook, section 1.3.5.17).
        Assert.Equal(2, Spread.Mad([1, 2, 3, 4, 5, 6, 7, 8, 100]));
        Assert.Equal(0.44478, Spread.RobustSigma([101.2, 100.9, 101.5, 101.1, 108.7, 101.3, 100.8], 0), 5);
    }

    [Fact]
    public void The_windowed_median_finds_both_spikes()
    {
        // Invented data; the same flags with the hampel function of the R package pracma.
        double[] x = [101.2, 101.0, 100.9, 101.3, 101.1, 112.4, 101.2, 100.8, 101.0, 101.1, 101.4, 90.2, 101.3, 101.2, 101.0];

        Assert.Equal([5, 11], Outliers.Hampel(x).Select(f => f.Index));
        Assert.All(Outliers.Hampel(x), f => Assert.Equal(101.1, f.Median, 10));
    }

    [Fact]
    public void One_step_of_the_display_is_no_outlier_among_equal_readings()
    {
        double[] x = [50, 50, 50, 50, 50, 50.1, 50, 50, 50, 50];

        Assert.Equal([5], Outliers.Hampel(x).Select(f => f.Index));
        Assert.Empty(Outliers.Hampel(x, resolution: 0.2));
    }
}
