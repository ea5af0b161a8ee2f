using Logbook.Checks.Charts;

namespace CrossExamination.Tests.Charts;

public sealed class TrendStatisticsTests
{
    /// <summary>Invented: causticity every two hours. Expected figures computed with an independent numeric library.</summary>
    private static readonly double[] Drift = [83.1, 83.0, 82.6, 82.9, 82.4, 82.5, 82.0, 82.2, 81.7, 81.8, 81.3, 81.5];

    private static readonly double[] Flat = [82.1, 82.4, 82.0, 82.3, 82.2, 82.0, 82.4, 82.1, 82.3, 82.2, 82.1, 82.2];

    private static readonly double[] Hours = [.. Enumerable.Range(0, 12).Select(i => 2.0 * i)];

    [Theory] // The exact distribution of Kendall's S, by its published recursion.
    [InlineData(4, 6, 0.041667)]
    [InlineData(5, 8, 0.041667)]
    [InlineData(6, 11, 0.027778)]
    [InlineData(8, 16, 0.030506)]
    [InlineData(10, 19, 0.054157)]
    [InlineData(10, 21, 0.036275)]
    public void Exact_chances_of_the_trend_test_are_the_tabled_ones(int n, int s, double p)
    {
        Assert.Equal(p, MannKendall.OneSided(n, s), 6);
    }

    [Fact]
    public void A_drift_is_found_with_its_slope_and_interval()
    {
        var test = MannKendall.Of(Drift);
        var line = TheilSen.Of(Hours, Drift, test.Variance);

        Assert.Equal(-56, test.S);
        Assert.Equal(212.6667, test.Variance, 4);
        Assert.Equal(-3.771490, test.Z, 6);
        Assert.Equal(1.6228e-4, test.P, 8);
        Assert.Equal(-0.0822916667, line.Slope, 10);
        Assert.Equal(-0.096062060, line.Low, 8);
        Assert.Equal(-0.060787588, line.High, 8);
    }

    [Fact]
    public void A_level_series_has_no_trend_and_no_time_to_a_limit()
    {
        var test = MannKendall.Of(Flat);
        var line = TheilSen.Of(Hours, Flat, test.Variance);

        Assert.Equal(-1, test.S);
        Assert.Equal(202.3333, test.Variance, 4);
        Assert.Equal(0, test.Z);
        Assert.Equal(0, line.Slope, 12);
        Assert.Equal(TimeToLimit.NoTrend, TimeToLimit.Of(line, 80.5, 22));
    }

    [Fact]
    public void The_time_to_a_limit_carries_its_interval()
    {
        var line = TheilSen.Of(Hours, Drift, MannKendall.Of(Drift).Variance);

        var time = TimeToLimit.Of(line, 80.5, 22);

        Assert.Equal(81.394792, line.At(22), 6);
        Assert.Equal(10.8734, time.Hours!.Value, 4);
        Assert.Equal(7.7379, time.Earliest!.Value, 4);
        Assert.Equal(18.6113, time.Latest!.Value, 4);
    }

    [Fact]
    public void A_limit_behind_the_line_is_never_ahead()
    {
        var line = TheilSen.Of(Hours, Drift, MannKendall.Of(Drift).Variance);

        Assert.Equal(TimeToLimit.NoTrend, TimeToLimit.Of(line, 90, 22));
    }

    [Fact]
    public void The_median_slope_of_the_certified_line_is_close_to_it()
    {
        // StRD Norris, certified least-squares slope 1.00211681802045; the median slope computed independently.
        var sorted = Certified.Norris.OrderBy(p => p.X).ToList();

        var line = TheilSen.Of([.. sorted.Select(p => p.X)], [.. sorted.Select(p => p.Y)], 0);

        Assert.Equal(1.0021968366, line.Slope, 9);
    }

    [Fact]
    public void A_sudden_change_is_placed_and_judged_by_shuffling()
    {
        // Invented data. The usual formula gives 0.014893, 20 000 independent shuffles about 0.0007.
        var change = ChangePoint.Of([84.1, 83.8, 84.3, 84.0, 83.9, 84.2, 84.0, 81.9, 82.2, 82.0, 81.8, 82.1, 82.3, 81.9]);

        Assert.Equal([9, 10, 23, 29, 32, 43, 49, 39, 36, 29, 16, 11, 10, 0], change.U);
        Assert.Equal(7, change.After);
        Assert.Equal(0.014893, ChangePoint.Asymptotic(14, change.K), 6);
        Assert.InRange(change.P, 0.0003, 0.0012);
    }

    [Fact]
    public void Runs_about_the_median_are_those_of_the_handbook()
    {
        // NIST/SEMATECH e-Handbook, section 1.3.5.13, on StRD Lew: Z = 2.6938 (from memory; computed independently).
        var runs = Runs.Of(Certified.Lew);

        Assert.Equal((120, 100, 100), (runs.Count, runs.Above, runs.Below));
        Assert.Equal(7.053279, runs.Sigma, 6);
        Assert.Equal(2.693783, runs.Z, 6);
    }

    [Theory] // Invented sequences, computed independently.
    [InlineData(new[] { 7.2, 7.4, 7.1, 7.6, 7.5, 7.3, 7.8, 7.9, 7.7, 8.0, 8.1, 7.9, 8.2, 8.0, 8.3, 8.1 }, 4, -2.587746)]
    [InlineData(new[] { 1.0, 2, 1, 2, 1, 2, 1, 2, 1, 2, 1, 2 }, 12, 3.027650)]
    public void Too_few_runs_are_drift_and_too_many_are_alternation(double[] values, int count, double z)
    {
        var runs = Runs.Of(values);

        Assert.Equal(count, runs.Count);
        Assert.Equal(z, runs.Z, 6);
    }

    [Theory] // Exact for independent normal readings, summed over the display's cells.
    [InlineData(0.05, 0.014103, 2e-6)]
    [InlineData(0.25, 0.070341, 1e-6)]
    [InlineData(0.5, 0.139596, 1e-6)]
    [InlineData(1, 0.270914, 1e-6)]
    [InlineData(2, 0.515559, 1e-6)]
    public void The_chance_of_a_repeat_follows_from_the_resolution(double resolution, double exact, double tolerance)
    {
        Assert.Equal(exact, Stuck.ChanceOfRepeat(resolution, 1), tolerance);
    }

    [Theory] // Simulated 200 000 times by an independent program.
    [InlineData(4, 0.0249)]
    [InlineData(5, 0.00223)]
    [InlineData(6, 0.000199)]
    public void The_chance_of_a_run_of_equal_readings_in_sixty(int length, double chance)
    {
        Assert.Equal(chance, Stuck.ChanceOfRun(0.25, 1, length), chance * 0.05);
    }

    [Fact]
    public void A_flat_line_is_found_by_count_and_tolerance()
    {
        // After the flat-line test of the ocean-observing quality manuals (QARTOD); invented data.
        double[] exact = [81.2, 81.4, 81.3, 81.5, 81.5, 81.5, 81.5, 81.5, 81.6, 81.4];
        double[] near = [50.1, 50.15, 50.1, 50.12, 50.1, 50.14, 50.9];

        Assert.Equal([6, 7, 8], Stuck.FlatLine(exact, 3));
        Assert.Equal([8], Stuck.FlatLine(exact, 5));
        Assert.Equal([5, 6], Stuck.FlatLine(near, 5, 0.1));
    }

    [Fact]
    public void A_copied_round_is_judged_by_each_points_own_rate()
    {
        Assert.Equal(1.48e-7, Stuck.ChanceOfCopy(Enumerable.Repeat(0.14, 8)), 9);
    }
}
