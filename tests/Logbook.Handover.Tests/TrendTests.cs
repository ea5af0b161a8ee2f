using Logbook.Plant;

namespace Logbook.Handover.Tests;

public class TrendTests
{
    private static readonly DateTimeOffset Start = SmallLine.At("2026-11-24T07:00-05:00");

    [Fact]
    public void The_slope_is_that_of_a_published_example()
    {
        // Anscombe, F. J., Graphs in Statistical Analysis, The American Statistician 27 (1973) 17-21, first data set:
        // slope 0.500, standard error of the slope 0.118, intercept 3.00. Two more digits computed from the data by hand.
        double[] x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
        double[] y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];

        var trend = Trend.Of(Values(x.Zip(y).OrderBy(p => p.First), new Limits(null, null, 12, 20)));

        Assert.NotNull(trend);
        Assert.Equal(0.5001, trend.PerHour, 4);
        // The line is at 10.0015 after 14 hours: 1.9985 to go to the limit, 3.996 h at 0.5001 an hour.
        Assert.Equal(17.996, (trend.ReachedAt - Start).TotalHours, 2);
    }

    [Fact]
    public void A_change_within_the_uncertainty_of_two_readings_is_no_trend()
    {
        // 0.5 over the shift; two readings with u = 0.2 differ by up to 0.57 for no reason (2 x sqrt 2 x u).
        Assert.Null(Trend.Of(Values([(0, 10.0), (4, 10.25), (8, 10.5)], new Limits(null, null, 11, null), u: 0.2)));
        Assert.NotNull(Trend.Of(Values([(0, 10.0), (4, 10.25), (8, 10.5)], new Limits(null, null, 11, null), u: 0.1)));
    }

    [Fact]
    public void A_tank_that_has_not_moved_for_hours_is_steady_whatever_it_did_before()
    {
        using var line = new SmallLine("2026-11-24T07:30-05:00");
        foreach (var (at, level) in new[] { ("07:30", 50.0), ("09:00", 56.0), ("10:30", 62.0), ("12:00", 66.0), ("13:00", 66.4), ("14:00", 66.1), ("15:00", 66.3), ("16:00", 66.0) })
        {
            line.Clock($"2026-11-24T{at}-05:00").Record(null, System.FormattableString.Invariant($"WT-L={level:0.0}"));
        }

        var text = Assert.Single(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "moving").Lines, l => l.Label == "WT-L").Text;

        Assert.Contains("went up, steady since 12:00", text, StringComparison.Ordinal);
        Assert.DoesNotContain("at that rate", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_walk_that_was_saved_in_parts_is_one_reading()
    {
        var once = Values([(0, 10.0), (4, 12.0), (8, 14.0)], new Limits(null, null, 16, null))!;
        var parts = Values([(0, 10.0), (4, 12.0), (4.003, 12.0), (4.006, 12.0), (8, 14.0)], new Limits(null, null, 16, null))!;

        Assert.Equal(Trend.Of(once)!.Values.Count, Trend.Of(parts)!.Values.Count);
    }

    [Fact]
    public void Scatter_is_no_trend() =>
        Assert.Null(Trend.Of(Values([(0, 10.0), (1, 14.0), (2, 9.0), (3, 15.0), (4, 11.0), (5, 14.0)], new Limits(null, null, 20, null))));

    [Theory]
    [InlineData(1.0, "the upper watch limit")]
    [InlineData(-1.0, "the lower urgent limit")]
    public void The_next_limit_in_its_direction_is_named(double perHour, string expected)
    {
        var limits = new Limits(UrgentLow: 35, WatchLow: null, WatchHigh: 65, UrgentHigh: 80);

        var trend = Trend.Of(Values([.. Enumerable.Range(0, 9).Select(h => ((double)h, 50 + (perHour * h)))], limits));

        Assert.Equal(expected, trend?.LimitName);
    }

    [Fact]
    public void A_limit_that_the_line_or_the_last_reading_has_passed_is_no_forecast()
    {
        // 0.2 an hour; the last reading lies above the line and, alone, above 12.1.
        IReadOnlyList<(double, double)> values = [.. Enumerable.Range(0, 10).Select(h => ((double)h, 10 + (0.2 * h) + (h == 9 ? 0.4 : 0)))];

        Assert.Equal("the upper urgent limit", Trend.Of(Values(values, new Limits(null, null, 12.1, 13)))?.LimitName);
        Assert.Null(Trend.Of(Values(values, new Limits(null, null, 12.1, null))));
    }

    [Fact]
    public void What_went_down_in_one_step_and_has_stood_since_is_steady_and_a_slow_creep_is_not()
    {
        var limits = new Limits(null, 240, null, null);

        var step = Trend.Of(Values([(0, 299.0), (1, 296), (2, 298), (3, 295), (4, 294), (5, 295), (6, 262), (7, 263), (8, 262), (9, 262)], limits, u: 2));
        Assert.Equal(Start.AddHours(6), step?.SteadySince?.At);

        var creep = Trend.Of(Values([.. Enumerable.Range(0, 12).Select(h => ((double)h, 299 - (3.0 * h)))], limits, u: 2));
        Assert.NotNull(creep);
        Assert.Null(creep.SteadySince);
    }

    [Fact]
    public void What_reaches_no_limit_within_a_day_is_left_out() =>
        Assert.Null(Trend.Of(Values([.. Enumerable.Range(0, 9).Select(h => ((double)h, 50.0 + h))], new Limits(null, null, 90, null))));

    // A tank that an operator of the trade read in one shift: 10.5 % an hour since 21:21 by hand, (56.3 - 38.9) / 1.65 h, so that
    // 30 % is 0.85 h ahead; the line through all six says 4.5 and names a time three hours later.
    private static readonly (double, double)[] RunsEmpty = [(0.12, 56.8), (1.1, 56.6), (2.35, 56.3), (3.8, 44.0), (3.933, 42.6), (4.0, 38.9)];

    [Fact]
    public void A_tank_that_begins_to_fall_late_is_told_by_its_newest_stretch_beside_the_whole_shift()
    {
        var trend = Trend.Of(Level(RunsEmpty));

        Assert.NotNull(trend);
        Assert.Equal(-10.5, trend.PerHour, 1);
        Assert.Equal(Start.AddHours(2.35), trend.From?.At);
        Assert.Equal(4.84, (trend.ReachedAt - Start).TotalHours, 1);
        Assert.InRange(trend.OverTheShift!.Value, -5.5, -4);
    }

    [Fact]
    public void The_first_reading_of_a_fast_fall_is_told_at_once()
    {
        var trend = Trend.Of(Level(RunsEmpty[..4]));

        Assert.Equal("the lower watch limit", trend?.LimitName);
        Assert.Equal(-8.5, trend!.PerHour, 1);
        Assert.Null(trend.OverTheShift);
    }

    [Fact]
    public void A_tank_that_rises_late_is_told_too() =>
        Assert.Equal("the upper watch limit", Trend.Of(Level([(0, 50.0), (1, 50.2), (2, 50.1), (3, 62.0), (3.75, 74.0)]))?.LimitName);

    [Fact]
    public void A_steady_tank_with_the_scatter_of_its_readings_is_no_trend()
    {
        // Half a percent of standard uncertainty: readings between 55 and 57, also far apart in time, and at the shift's end.
        Assert.Null(Trend.Of(Level([(0, 56.0), (1, 55.0), (2, 57.0), (3, 55.5), (4, 57.0), (4.5, 55.0)])));
        Assert.Null(Trend.Of(Level([(0, 56.0), (1, 57.0)])));
    }

    [Fact]
    public void A_tank_that_falls_evenly_all_shift_is_told_by_the_whole_shift() =>
        Assert.Null(Trend.Of(Level([.. Enumerable.Range(0, 9).Select(h => ((double)h, 70.0 - (4 * h)))]))!.From);

    [Fact]
    public void What_is_no_tank_goes_by_the_whole_shift_alone() =>
        Assert.Null(Trend.Of(Values(RunsEmpty, new Limits(12, 30, 80, 93), u: 0.5))?.From);

    // A wash tank that falls 2 % an hour in the morning and 3.6 in the last five hours. By hand, with the mean hour 5.5 and the sum
    // of squares 143: 5.5 (50 - 80) + 4.5 (53.6 - 78) + 3.5 (57.2 - 76) + 2.5 (60.8 - 74) + 1.5 (64.4 - 72) + 0.5 (68 - 70) = -386,
    // so 2.70 over the shift, and 30 % 20 / 2.70 = 7.41 h ahead. The newest four hours, 64.4 to 50, fall 3.6: 20 / 3.6 = 5.56 h ahead.
    // Two hours of them are 7.2 where the whole would have 5.4: 1.8 apart, less than the 2.83 that a stretch must be.
    private static readonly (double, double)[] FallsFasterLate = [(0, 80), (1, 78), (2, 76), (3, 74), (4, 72), (5, 70), (6, 68), (7, 64.4), (8, 60.8), (9, 57.2), (10, 53.6), (11, 50)];

    [Fact]
    public void A_tank_that_falls_faster_in_its_newest_hours_is_told_by_these()
    {
        var trend = Trend.Of(Level(FallsFasterLate));

        Assert.NotNull(trend);
        Assert.Equal(-3.6, trend.PerHour, 6);
        Assert.Equal(Start.AddHours(7), trend.From?.At);
        Assert.Equal(-2.699, trend.OverTheShift!.Value, 3);
        Assert.Equal(16.556, (trend.ReachedAt - Start).TotalHours, 2);
    }

    [Fact]
    public void What_the_scatter_of_the_newest_hours_explains_is_told_by_the_whole_shift()
    {
        // With u = 2 the slope of five hourly readings is known to 2 / sqrt 10 = 0.63 an hour: 0.9 more than the whole is within three of it.
        var trend = Trend.Of(Level(FallsFasterLate, u: 2));

        Assert.NotNull(trend);
        Assert.Null(trend.From);
        Assert.Equal(18.41, (trend.ReachedAt - Start).TotalHours, 2);
    }

    [Fact]
    public void A_tank_that_falls_slower_in_its_newest_hours_is_told_by_the_whole_shift_which_is_sooner() =>
        Assert.Null(Trend.Of(Level([(0, 80), (1, 75), (2, 70), (3, 65), (4, 60), (5, 55), (6, 50), (7, 48), (8, 46), (9, 44), (10, 42), (11, 40)]))?.From);

    [Fact]
    public void Three_readings_in_the_newest_hours_draw_no_line_of_their_own() =>
        Assert.Null(Trend.Of(Level([(0, 80), (1, 78), (2, 76), (3, 74), (4, 72), (5, 70), (6, 68), (7.5, 62.6), (9, 57.2), (11, 50)]))?.From);

    private static List<Seen> Level(IEnumerable<(double Hours, double Value)> values, double u = 0.5)
    {
        var point = new Point { Tag = "WW-L", Description = "Weak wash tank level", Area = "weak-wash", Unit = new Unit("%", "share", 1), Kind = PointKind.Read, Lowest = 0, Highest = 100, Limits = new Limits(12, 30, 80, 93) };
        return [.. values.Select((v, i) => new Seen(point, Start.AddHours(v.Hours), v.Value, u, i + 1))];
    }

    private static List<Seen> Values(IEnumerable<(double Hours, double Value)> values, Limits limits, double u = 0.01)
    {
        var point = new Point { Tag = "P", Description = "A point", Area = "site", Unit = new Unit("%", "share", 1), Kind = PointKind.Read, Limits = limits };
        return [.. values.Select((v, i) => new Seen(point, Start.AddHours(v.Hours), v.Value, u, i + 1))];
    }
}
