using Logbook.Checks.Charts;

namespace CrossExamination.Tests.Charts;

/// <summary>
/// Against the worked examples of the NIST/SEMATECH e-Handbook of Statistical Methods, section named beside each. Figures with
/// more digits than the book prints were computed with an independent numeric library.
/// </summary>
public sealed class ChartTests
{
    /// <summary>Section 6.3.2.2, flow rate.</summary>
    private static readonly double[] FlowRate = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

    /// <summary>Section 6.3.2.4.</summary>
    private static readonly double[] Smoothed =
    [
        52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1,
    ];

    /// <summary>Section 6.3.2.3.</summary>
    private static readonly double[] Summed =
    [
        324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600, 324.625, 325.150, 328.325, 327.250,
        327.825, 328.500, 326.675, 327.775, 326.875, 328.350,
    ];

    [Fact]
    public void Individuals_limits_are_those_of_the_handbook()
    {
        var chart = IndividualsChart.Of(FlowRate);

        Assert.Equal(50.81, chart.Centre, 10);
        Assert.Equal(1.8777777778 / 1.128, chart.SigmaMr, 8);
        Assert.Equal(55.8040898, chart.Centre + (3 * chart.SigmaMr), 6);
        Assert.Equal(45.8159102, chart.Centre - (3 * chart.SigmaMr), 6);
        Assert.Equal(6.1347, chart.MrUpper, 4);
    }

    [Fact]
    public void A_moving_range_is_not_formed_across_a_break()
    {
        Assert.Equal([1.0, 2.0], Spread.MovingRanges([1, 2, 50, 52], [false, false, true, false]));
    }

    [Fact]
    public void Moving_average_and_limits_are_those_of_the_handbook()
    {
        var ewma = Ewma.Of(Smoothed, 50, 2.0539, 0.3, 3);

        double[] printed =
        [
            50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23,
            51.94, 51.99,
        ];
        Assert.All(printed.Zip(ewma.Values), p => Assert.Equal(p.First, p.Second, 0.0051));
        Assert.Equal(51.988243, ewma.Last, 6);
        Assert.Equal(52.5884, ewma.Upper, 1e-4);
        Assert.Equal(47.4115, ewma.Lower, 1e-4);
        Assert.Empty(ewma.Beyond());
        Assert.All(new[] { 1.8485, 2.2564, 2.4314, 2.5127, 2.5516 }.Select((h, i) => (h, i)), p => Assert.Equal(p.h, ewma.Half(p.i + 1), 4));
    }

    [Fact]
    public void Cumulative_sums_signal_where_the_handbook_says()
    {
        var cusum = Cusum.Of(Summed, 325, 0.3175, 4.1959);

        double[] high = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04];
        double[] low = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0];
        Assert.All(high.Zip(cusum.High), p => Assert.Equal(p.First, p.Second, 0.006));
        Assert.All(low.Zip(cusum.Low), p => Assert.Equal(p.First, p.Second, 0.006));
        Assert.Equal(14, cusum.SignalIndex);
        Assert.Equal(13, cusum.StartIndex);
        Assert.True(cusum.Upwards);
    }

    [Fact]
    public void A_chart_of_readings_that_remember_takes_the_standard_deviation()
    {
        // StRD Mavro: with limits from the moving range 29 of 50 readings would lie outside, computed from the certified data.
        var chart = IndividualsChart.Of(Certified.Mavro);

        Assert.True(chart.Remembers);
        Assert.Equal(0.2192, chart.SigmaMr / 0.000429123454003053, 4);
        Assert.Equal(29, Certified.Mavro.Count(v => Math.Abs(v - chart.Centre) > 3 * chart.SigmaMr));
        Assert.DoesNotContain(Certified.Mavro, v => v < chart.Lower || v > chart.Upper);
        Assert.Equal(3.0025, chart.Residuals(Certified.Mavro).Max(Math.Abs) / 1.3025e-4, 0.0006);
    }

    [Fact]
    public void A_chart_of_readings_without_memory_takes_the_moving_range()
    {
        var chart = IndividualsChart.Of(Certified.Lew);

        Assert.False(chart.Remembers);
        Assert.Equal(1.2806, chart.SigmaMr / 277.332168044316, 4);
    }

    [Theory]
    [InlineData("Lew", -0.307304800605679)]
    [InlineData("Mavro", 0.937989183438248)]
    public void Lag_one_correlation_is_the_certified_one(string set, double certified)
    {
        // NIST Statistical Reference Datasets, univariate.
        Assert.Equal(certified, Spread.Lag1(set == "Lew" ? Certified.Lew : Certified.Mavro), 12);
    }

    [Fact]
    public void A_constant_series_has_no_correlation_and_no_spread()
    {
        var chart = IndividualsChart.Of([7, 7, 7, 7]);

        Assert.Equal(0, chart.Lag1);
        Assert.Equal(0, chart.Sigma);
    }
}
