using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Screens.Tests;

public sealed class GraphTests
{
    [Fact]
    public void On_the_smallest_screen_the_chart_keeps_its_place_below_what_can_hurt()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "eyewash out", null, ("instead", "the one at the stair"));
            t.Carry("permit", "slaker", "welding at the hatch", Logbook.Testing.Some.Morning.AddHours(3), ("number", "4417"), ("inside", "1"));
        });

        terminal.Size(40, 10).Press("gSL-T1⏎");

        Assert.Contains("INSIDE Slaker", terminal.Screen, StringComparison.Ordinal);
        Assert.Equal(2, terminal.Screen.Split('\n').Count(l => l.Contains(" |", StringComparison.Ordinal)));
        Assert.Contains("99.6 degC", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_point_is_found_by_a_part_of_its_name_and_drawn()
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Press("/green liquor flow⏎");

        Assert.Equal(["SL-F1"], Graph(terminal).Points, StringComparer.Ordinal);
        Assert.Contains("SL-F1 Green liquor flow to the slaker, m3/h", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("305 m3/h at 08:32", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_beyond_its_limit_and_a_corrected_one_have_shapes_of_their_own()
    {
        using var terminal = new Terminal(before: t =>
        {
            Hours(t);
            var high = t.At(-25).Record(null, "SL-F1=352");
            t.At(-22).Record(null, "SL-F1=229");
            var wrong = t.At(-20).Record(null, "SL-F1=310");
            Checks.Writing.Correct(t.Desk, wrong, Some.Reading("SL-F1", "301"), "misread", "op1");
            Assert.True(high > 0);
        });

        terminal.Press("/SL-F1⏎");

        var marks = Graph(terminal).Series[0].Values.TakeLast(3).Select(v => Graph(terminal).Series[0].Mark(v).Mark);
        Assert.Equal("^vc", string.Concat(marks));
        Assert.Contains("corrected (#", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_is_drawn_as_it_was_when_the_value_was_read()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Record(null, "SL-F1=345");
            t.At(-30);
            Assert.Empty(Adopt(t, ("SL-F1,Green liquor flow to the slaker,slaker,m3/h,read,0,1,1%,0,600,200,240,340", "SL-F1,Green liquor flow to the slaker,slaker,m3/h,read,0,1,1%,0,600,200,240,360")));
            t.At(-20).Record(null, "SL-F1=346");
        });

        terminal.Press("/SL-F1⏎");

        var series = Graph(terminal).Series[0];
        Assert.Equal("^o", string.Concat(series.Values.TakeLast(2).Select(v => series.Mark(v).Mark)));
        Assert.Equal([340, 360], series.Limits.Select(l => l.Limits.WatchHigh!.Value));
    }

    [Fact]
    public void A_point_that_is_looked_at_has_its_words_on_the_axis()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Record(null, "SL-HATCH=1");
            t.At(-30).Record(null, "SL-HATCH=3");
        });

        terminal.Press("/SL-HATCH⏎");

        Assert.Contains("shut |", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("open |", terminal.Screen, StringComparison.Ordinal);
        Assert.DoesNotContain("choice", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_cursor_goes_from_value_to_value_and_Enter_opens_the_record()
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Press("/SL-F1⏎←←");
        Assert.Contains("303 m3/h at 08:22", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("SL-F1", terminal.Screen, StringComparison.Ordinal);
        Assert.IsType<RecordPage>(terminal.State.Top);
    }

    [Fact]
    public void Zoom_and_walk_change_the_stretch_and_end_where_they_must()
    {
        using var terminal = new Terminal(before: Hours);
        terminal.Press("/SL-F1⏎");

        Assert.Equal(TimeSpan.FromHours(12), Graph(terminal.Press("+")).Window.Span);
        Assert.Equal(TimeSpan.FromHours(4), Graph(terminal.Press("+")).Window.Span);
        terminal.Press("+");
        Assert.Contains("+: closer than four hours there is nothing more to see", terminal.Screen, StringComparison.Ordinal);
        Assert.Equal(Some.Morning.AddHours(-2), Graph(terminal.Press(",")).Window.Ends);
        Assert.Null(Graph(terminal.Press(".")).Window.Ends);
        Assert.Contains(".: this is now", terminal.Press(".").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Points_are_added_below_up_to_four_and_taken_away_again()
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Press("/SL-F1⏎pSL-T1⏎pLM-F1⏎pLM-CAO⏎");
        Assert.Equal(4, Graph(terminal).Series.Count);
        Assert.Contains("p: four points are the most", terminal.Press("p").Screen, StringComparison.Ordinal);
        terminal.Press("⌦⌦");

        Assert.Equal(["SL-F1", "SL-T1"], Graph(terminal).Points, StringComparer.Ordinal);
    }

    [Fact]
    public void The_slope_is_said_in_words()
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Press("/SL-F1⏎");

        Assert.Contains("rising 12 m3/h an hour; reaches the upper watch limit in about 2.92 h", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_limit_that_is_further_away_than_three_days_no_time_is_said()
    {
        using var terminal = new Terminal(before: t =>
        {
            for (var i = 1; i < 9; i++)
            {
                t.At(-53 + (5 * i)).Record(null, FormattableString.Invariant($"SL-F1={301 + (0.002 * i)}"));
            }
        });

        terminal.Press("/SL-F1⏎");

        Assert.Contains("no limit in sight within three days", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("E+", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_values_before_a_new_one_are_not_shown_before_it_is_typed()
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Open("Line round").Press("g");

        Assert.IsType<RoundPage>(terminal.State.Top);
        Assert.Contains("g: type the new value first", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_reading_comes_into_the_graph_by_itself()
    {
        using var terminal = new Terminal(before: Hours);
        terminal.Press("/SL-F1⏎");

        terminal.Record(null, "SL-F1=322");
        terminal.Tick(0.02);

        Assert.Contains("322 m3/h at 09:05", terminal.Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("339.8", -1)]
    [InlineData("340", -1)]
    [InlineData("340.3", 1)]
    public void A_value_beside_its_limit_is_drawn_on_its_own_side_and_never_on_the_limits_row(string value, int side)
    {
        using var terminal = new Terminal(before: t =>
        {
            Hours(t);
            t.At(-20).Record(null, "SL-F1=330");
            t.At(-10).Record(null, "SL-F1=" + value);
        });

        var lines = terminal.Press("/SL-F1⏎").Screen.Split('\n').ToList();

        var limit = lines.FindIndex(l => l.Contains("w 340 |", StringComparison.Ordinal));
        var row = lines.FindIndex(l => l.Contains('|') && l.TrimEnd()[^1] is 'o' or '^');
        Assert.DoesNotContain(lines[limit], c => c is 'o' or '^');
        Assert.Equal(-side, Math.Sign(row - limit));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void With_several_points_on_a_small_screen_the_times_stay_in_sight_and_a_value_on_its_side(int points)
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Press("/SL-F1⏎pLM-CAO⏎pSL-T1⏎");
        terminal.Press(points == 4 ? "pLM-F1⏎" : "");

        Assert.Contains("N 2 Mar 19:00", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("w watch = u urgent", terminal.Screen, StringComparison.Ordinal);
    }

    /// <summary>Densities between limits 20 apart, as two and three graphs share a small screen.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(9)]
    public void On_few_rows_no_value_lies_on_the_row_of_a_limit_that_is_drawn(int rows)
    {
        var limits = Limits.None with { WatchLow = 992, WatchHigh = 1012 };
        using var terminal = new Terminal();
        var point = terminal.Desk.Site.FindPoint("SL-F1")! with { Limits = limits };
        double[] values = [1001, 1004.5, 1008];
        var series = new GraphSeries(point, [.. values.Select((v, i) => new SeriesValue(point.Tag, Some.Morning.AddHours(i), v, null, "", null, null, "op1", i, null))], [new Handover.LimitsThen(Some.Morning.AddDays(-9), Some.Morning.AddDays(9), limits)], []);

        var scale = GraphScale.Of(series, rows, Some.Morning, TimeSpan.FromHours(4), 40);

        Assert.All(values, v => Assert.DoesNotContain(scale.RowOf(v, limits), GraphScale.All(limits).Select(scale.LimitRow).OfType<int>().Cast<int?>()));
        Assert.Equal(Math.Min(2, (rows - 1) / 2), GraphScale.All(limits).Count(l => scale.LimitRow(l) is not null));
    }

    [Fact]
    public void Over_a_month_the_mondays_are_marked_and_not_every_shift()
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Press("/SL-F1⏎------");

        var row = terminal.Screen.Split('\n').First(l => l.Contains(':', StringComparison.Ordinal) && l.Contains('|', StringComparison.Ordinal));
        Assert.InRange(row.Count(c => c == ':'), 1, 5);
        Assert.Contains("30 days", terminal.Screen, StringComparison.Ordinal);
    }

    // By hand, on three rows from 12 to 0: the limits 4, 7 and 8 all lie in the middle row, 5.3 between them.
    [Fact]
    public void A_value_between_limits_that_share_a_row_stays_there()
    {
        var limits = Limits.None with { WatchLow = 4, WatchHigh = 7, UrgentHigh = 8 };
        var scale = new GraphScale(0, 12, 3, Some.Morning, TimeSpan.FromHours(1), 10);

        Assert.Equal([1, 0, 2], new[] { 5.3, 8.3, 3.9 }.Select(v => scale.RowOf(v, limits)!.Value));
    }

    [Fact]
    public void Four_hours_have_their_hours_on_the_axis_and_the_marks_are_explained()
    {
        using var terminal = new Terminal(before: Hours);

        terminal.Press("/SL-F1⏎++");

        Assert.All(["06:00", "07:00", "08:00"], hour => Assert.Contains(hour, terminal.Screen, StringComparison.Ordinal));
        Assert.Contains("o value ^ above v below c corrected n not taken  - w watch = u urgent : shift", terminal.Screen, StringComparison.Ordinal);
    }

    internal static void Hours(Terminal terminal)
    {
        for (var i = 0; i < 6; i++)
        {
            terminal.At(-53 + (5 * i)).Record(null, FormattableString.Invariant($"SL-F1={300 + i}"));
        }
    }

    private static GraphPage Graph(Terminal terminal) => (GraphPage)terminal.State.Top;

    private static IReadOnlyList<Mistake> Adopt(Terminal terminal, params (string, string)[] words)
    {
        var files = new SiteFiles(terminal.Desk.Files.Texts.ToDictionary(f => f.Key, f => words.Aggregate(f.Value, (text, w) => text.Replace(w.Item1, w.Item2, StringComparison.Ordinal)), StringComparer.Ordinal));
        return Some.Adopt(Some.Desk(terminal.Clock, terminal.Journal, files), "higher flow", "eng1").Mistakes;
    }
}
