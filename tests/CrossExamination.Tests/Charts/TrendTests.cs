using Logbook.Checks.Charts;

namespace CrossExamination.Tests.Charts;

/// <summary>The whole answer for one point. Series are invented unless a source is named.</summary>
public sealed class TrendTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 6, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_drift_answers_with_slope_and_hours_to_the_limit_ahead()
    {
        var trend = Trend.Of("WL-CE", "%", Series(2, 83.1, 83.0, 82.6, 82.9, 82.4, 82.5, 82.0, 82.2, 81.7, 81.8, 81.3, 81.5),
            new TrendLimits(UrgentLow: 78, WatchLow: 80.5, WatchHigh: 85));

        Assert.Equal(-0.0822916667, trend.Slope!.PerHour, 10);
        Assert.Equal("watch_low", trend.HoursToLimit!.Limit);
        Assert.Equal(10.8734, trend.HoursToLimit.Value!.Value, 4);
        Assert.Equal(7.7379, trend.HoursToLimit.Low!.Value, 4);
        Assert.Equal(18.6113, trend.HoursToLimit.High!.Value, 4);
        Assert.Contains(trend.Words, w => w.Contains("falling 0.0823 % an hour; reaches the lower watch limit in about 10.9 h (7.74 to 18.6)", StringComparison.Ordinal));
    }

    [Fact]
    public void A_level_series_answers_no_trend()
    {
        var trend = Trend.Of("WL-CE", "%", Series(2, 82.1, 82.4, 82.0, 82.3, 82.2, 82.0, 82.4, 82.1, 82.3, 82.2, 82.1, 82.2), new TrendLimits(WatchLow: 80.5));

        Assert.Null(trend.HoursToLimit?.Value);
        Assert.Contains("no trend shown", trend.Words, StringComparer.Ordinal);
    }

    [Fact]
    public void Given_target_and_sigma_rule_the_charts()
    {
        // NIST/SEMATECH e-Handbook, section 6.3.2.3: k 0.5 and h 5 of sigma 0.635 differ from the book's h, the start does not.
        var trend = Trend.Of("F1", "m3/h", Series(1, 324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
            324.625, 325.150, 328.325, 327.250, 327.825, 328.500), new TrendLimits(), new TrendOptions { Target = 325, Sigma = 0.635 });

        Assert.Equal("given", trend.LimitsFrom);
        Assert.Equal((14, 13), (trend.Cusum!.SignalIndex!.Value, trend.Cusum.StartIndex!.Value));
        Assert.Contains(trend.Signals, s => s is { Rule: "beyond-3-sigma", Index: 13 });
    }

    [Fact]
    public void An_episode_is_told_once()
    {
        var z = Enumerable.Repeat(0.0, 20).Select((_, i) => i % 2 == 0 ? 0.6 : -0.6).Concat([4, 4.2, 3.9]).ToArray();

        var trend = Trend.Of("X", "K", Series(1, z), new TrendLimits(), new TrendOptions { Target = 0, Sigma = 1, BaselineTo = Start.AddHours(19) });

        Assert.Equal(21, Assert.Single(trend.Signals, s => s.Rule == "beyond-3-sigma").Index);
    }

    [Fact]
    public void Where_the_published_sum_stays_beyond_its_limit_one_signal_is_told()
    {
        // NIST/SEMATECH e-Handbook, section 6.3.2.3: from sample 14 to the end, 20, the sum is beyond. Against three sigma of the same
        // data (0.635) samples 13 to 16, 18 and 20 lie out, 17 and 19 just within: one excursion.
        var trend = Trend.Of("F1", "m3/h", Series(1, 324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
            324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350), new TrendLimits(), new TrendOptions { Target = 325, Sigma = 0.635 });

        Assert.Equal(14, trend.Cusum!.SignalIndex);
        Assert.Equal(13, Assert.Single(trend.Signals, s => s.Rule == "beyond-3-sigma").Index);
        Assert.Contains($"a small lasting shift since {trend.Points[trend.Cusum.StartIndex!.Value - 1].At:yyyy-MM-dd HH:mm}, by cumulative sums", trend.Words, StringComparer.Ordinal);
    }

    [Fact]
    public void Two_excursions_with_quiet_readings_between_are_two()
    {
        var trend = Trend.Of("X", "K", Series(1, 0.2, 4, 0.3, -0.4, 0.1, 4.1, -0.2, 0.4), new TrendLimits(), new TrendOptions { Target = 0, Sigma = 1 });

        Assert.Equal([2, 6], trend.Signals.Where(s => s.Rule == "beyond-3-sigma").Select(s => s.Index));
        Assert.Contains($"beyond three sigma of its centre: {trend.Points[5].At:yyyy-MM-dd HH:mm}, and 1 before", trend.Words, StringComparer.Ordinal);
    }

    [Fact]
    public void A_change_of_level_is_dated()
    {
        var trend = Trend.Of("WL-CE", "%", Series(2, 84.1, 83.8, 84.3, 84.0, 83.9, 84.2, 84.0, 81.9, 82.2, 82.0, 81.8, 82.1, 82.3, 81.9), new TrendLimits());

        Assert.Equal(7, trend.Change!.AfterIndex);
        Assert.Contains($"the level changed after {trend.Points[6].At:yyyy-MM-dd HH:mm}", trend.Words, StringComparer.Ordinal);
    }

    [Theory]
    [InlineData(new double[0], "no readings")]
    [InlineData(new[] { 5.0 }, "one reading: nothing to compare it with")]
    [InlineData(new[] { 5.0, double.NaN }, "one reading: nothing to compare it with")]
    [InlineData(new[] { 5.0, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5 }, "all readings are the same: nothing can be said of its spread")]
    [InlineData(new[] { 5.0, 6 }, "too few readings for a trend")]
    public void Poor_series_get_a_plain_word(double[] values, string word)
    {
        Assert.Contains(word, Trend.Of("X", "K", Series(1, values), new TrendLimits(WatchHigh: 9)).Words, StringComparer.Ordinal);
    }

    [Fact]
    public void A_gap_forms_no_moving_range()
    {
        var readings = Series(1, 1, 2, 1, 2, 1, 2, 1, 2).Concat(Series(1, 21, 22, 21, 22, 21, 22).Select(p => p with { At = p.At.AddDays(3) }));

        Assert.Equal(1 / 1.128, Trend.Of("X", "K", readings, new TrendLimits()).SigmaMr!.Value, 10);
    }

    private static IEnumerable<TrendPoint> Series(double every, params double[] values) =>
        values.Select((v, i) => new TrendPoint(Start.AddHours(every * i), v, i + 1));
}
