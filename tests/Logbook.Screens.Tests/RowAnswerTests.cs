using System.Globalization;
using Logbook.Journal;

namespace Logbook.Screens.Tests;

public sealed class RowAnswerTests
{
    [Fact]
    public void A_time_of_its_own_and_a_remark_keep_their_room_in_the_row()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("⏎t0830⏎mrough⏎348⏎");

        Assert.Contains("… (at 08:30, remark)", terminal.Screen.Split('\n').First(l => l.Contains("SL-F1 ", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_end_of_a_walk_is_asked_beside_its_beginning()
    {
        using var terminal = new Terminal();

        terminal.Open("Field walk").Press("0840⏎");

        Assert.Contains("The walk began 08:40. When did it end?", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Below_the_list_stands_the_whole_name_of_a_point_that_its_row_cuts_and_every_choice()
    {
        using var terminal = new Terminal().Size(60, 24);
        terminal.Open("Field walk").Press("0840⏎0850⏎");
        var point = terminal.Round.Row.Point;

        Assert.All(point.Choices, c => Assert.Contains($"{c.Digit} {c.Text}", terminal.Words, StringComparison.Ordinal));
        terminal.Press("⎋").Size(56, 24).Open("Line round").Press("⏎");

        Assert.Contains("SL-F1 Green liquor flow to the slaker", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_beyond_its_watch_limit_that_jumped_there_says_both_in_its_row()
    {
        var point = Testing.Some.Site.FindPoint("SL-T1")!;
        Finding limit = new(Level.Watch, "limit.watch-low", point.Tag, $"{point.Description} 45.0 degC, 37.0 K below the watch limit 82.0 degC", []);
        Finding step = new(Level.Watch, "step", point.Tag, $"{point.Description} 45.0 degC changed by 43.0 K since 2026-11-29 03:03; more than 6.0 K is unusual: the plant changed, or misread", []);

        Assert.Equal("watch: 37.0 K below the watch limit 82.0 degC; changed by 43.0 K, or misread", RowCheck.Of(point, [limit, step]).Words);
        Assert.DoesNotContain("misread", RowCheck.Of(point, [limit with { Level = Level.Urgent }, step]).Words, StringComparison.Ordinal);
        Assert.Equal("watch: changed by 43.0 K since 2026-11-29 03:03", RowCheck.Of(point, [step]).Words);
    }

    [Fact]
    public void Not_taken_is_a_letter_a_digit_and_Enter()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("n4⏎⎋");

        var reading = Assert.Single(Assert.Single(terminal.Entries).Readings);
        Assert.True(reading.NotTaken);
        Assert.Equal("instrument faulty", reading.Why);
    }

    [Theory]
    [InlineData("n42⏎")]
    [InlineData("n492⏎")]
    public void A_wrong_digit_chooses_again_and_never_lands_in_the_next_row(string keys)
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press(keys);

        Assert.Equal((1, ""), (terminal.Round.Current, terminal.Round.Field));
        Assert.Equal("forgot", terminal.Round.Rows[0].Why);
    }

    [Theory]
    [InlineData("2026-11-26T00:30:00-05:00", "2340", "2026-11-25T23:40:00-05:00")]
    [InlineData("2026-11-25T19:38:00-05:00", "1930", "2026-11-25T19:30:00-05:00")]
    [InlineData("2026-11-25T19:38:00-05:00", "2026-11-24 19:50", "2026-11-24T19:50:00-05:00")]
    [InlineData("2026-11-25T19:38:00-05:00", "1950", null)]
    [InlineData("2026-11-25T09:00:00-05:00", "2059", null)]
    public void A_time_still_to_come_is_last_night_or_needs_its_date(string now, string typed, string? expected)
    {
        using var terminal = new Terminal();

        var read = ClockText.Read(typed, terminal.Desk.Site, DateTimeOffset.Parse(now, CultureInfo.InvariantCulture), out var mistake);

        Assert.Equal(expected is null ? null : DateTimeOffset.Parse(expected, CultureInfo.InvariantCulture), read);
        Assert.Equal(expected is null, mistake.Contains("is still to come; if it was yesterday, with its date: 2026-11-24 ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0445", true)]
    [InlineData("0435", false)]
    [InlineData("2026-11-25 04:35", true)]
    public void A_time_of_more_than_half_a_day_ago_needs_its_date(string typed, bool accepted)
    {
        using var terminal = new Terminal();
        var now = new DateTimeOffset(2026, 11, 25, 16, 40, 0, TimeSpan.FromHours(-5));

        var read = ClockText.Read(typed, terminal.Desk.Site, now, out var mistake);

        Assert.Equal(accepted, read is not null);
        Assert.Equal(accepted ? "" : "04:35 was more than twelve hours ago; if so, with its date: 2026-11-25 04:35", mistake);
    }

    [Fact]
    public void Without_a_reason_nothing_is_not_taken()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("n⏎");
        Assert.Contains("choose a reason", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋");

        Assert.False(terminal.Round.Rows[0].Answered);
    }

    [Fact]
    public void A_remark_and_a_second_reading_stand_beside_the_first()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎↑mneedle swings⏎s100.1⏎⎋");

        var reading = Assert.Single(Assert.Single(terminal.Entries).Readings);
        Assert.Equal(("99.8", "needle swings", "100.1"), (reading.Typed, reading.Remark, reading.Second));
    }

    [Fact]
    public void A_second_reading_straight_after_Enter_belongs_to_the_value_that_was_just_typed()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎s");
        Assert.Contains("Second reading of SL-T1", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("99.6⏎");

        Assert.Equal((1, "", "99.6"), (terminal.Round.Current, terminal.Round.Field, terminal.Round.Rows[0].Line!.Second));
        terminal.Press("302⏎⎋");
        Assert.Equal("99.8 (99.6) 302 ()", string.Join(' ', Assert.Single(terminal.Entries).Readings.Select(r => $"{r.Typed} ({r.Second})")));
    }

    [Fact]
    public void A_second_reading_that_is_no_number_is_refused()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎↑sabout 100⏎");

        Assert.IsType<AskPage>(terminal.State.Top);
        Assert.Null(terminal.Round.Rows[0].Line!.Second);
    }

    [Fact]
    public void A_remark_without_a_value_is_saved_too()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("mgauge fogged⏎⎋");

        Assert.Equal("SL-T1: gauge fogged", Assert.Single(terminal.Entries).Remark);
    }

    [Theory]
    [InlineData("0852")]
    [InlineData("8:52")]
    [InlineData("852")]
    public void A_reading_may_be_older_than_its_typing(string time)
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press($"t{time}⏎99.8⏎⎋");

        Assert.Equal(Testing.Some.Morning.AddMinutes(-8), Assert.Single(Assert.Single(terminal.Entries).Readings).At);
    }

    [Fact]
    public void A_time_of_day_that_is_still_to_come_was_yesterday()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("t2350⏎99.8⏎⎋");

        Assert.Equal(Testing.Some.Morning.Date.AddMinutes(-10), Assert.Single(Assert.Single(terminal.Entries).Readings).At.DateTime);
    }

    [Fact]
    public void A_time_without_a_value_and_a_remark_taken_away_leave_nothing_to_save()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("t0852⏎↓mnoisy⏎m⌦⏎⎋");

        Assert.Empty(terminal.Entries);
        Assert.Null(terminal.State.Draft);
        Assert.DoesNotContain("NOT SAVED", terminal.Screen, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(terminal.Folder));
    }

    [Fact]
    public void A_time_that_is_none_is_asked_again()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("t2575⏎");

        Assert.IsType<AskPage>(terminal.State.Top);
        Assert.Contains("is not a time; accepted: 0935 or 9:35, within the last", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_field_walk_asks_its_times_once_and_its_readings_count_from_its_end()
    {
        using var terminal = new Terminal();

        terminal.Open("Field walk").Press("0840⏎0855⏎2⏎101⏎⏎");

        var entry = Assert.Single(terminal.Entries);
        Assert.Equal((Testing.Some.Morning.AddMinutes(-20), Testing.Some.Morning.AddMinutes(-5)), (entry.WalkStart, entry.WalkEnd));
        Assert.All(entry.Readings, r => Assert.Equal(Testing.Some.Morning.AddMinutes(-5), r.At));
        Assert.Equal("SL-HATCH=2 SL-I=101", terminal.Typed);
    }

    [Fact]
    public void A_walk_does_not_end_before_it_began()
    {
        using var terminal = new Terminal();

        terminal.Open("Field walk").Press("0855⏎0840⏎");

        Assert.Contains("end before it began", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋");
        Assert.IsType<ChoosePage>(terminal.State.Top);
    }

    [Fact]
    public void Look_and_listen_is_one_digit_and_another_digit_is_another_answer()
    {
        using var terminal = new Terminal();

        terminal.Open("Field walk").Press("0840⏎0855⏎");
        Assert.Contains("1 shut, 2 ajar (watch), 3 open (urgent)", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("32");

        Assert.Equal("2", terminal.Round.Field);
        Assert.Contains("watch: ajar", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains(" was 3, now 2: one digit is one answer", terminal.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("t0852⏎")]
    [InlineData("mneedle swings⏎")]
    public void To_a_value_that_saved_itself_the_round_adds_nothing_and_says_where_that_is_done(string keys)
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("103.6⏎⎋").Open("Line round").Press("↑↑↑↑" + keys);
        var saved = terminal.Round.Rows[0].Saved!;
        Assert.Contains($"SL-T1 is saved already {Handover.Say.Ref(saved.Seq)}", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("nothing is taken here: Esc leads back", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋");

        Assert.Equal(("", null, saved), (terminal.Round.Field, terminal.Round.Rows[0].Line, terminal.Round.Rows[0].Saved));
        Assert.Null(terminal.State.Draft);
    }

    [Fact]
    public void A_round_opened_again_shows_the_newest_value_of_its_window_and_what_is_said_of_it()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("9.94⏎⎋⎋").At(6);
        terminal.Record("hourly", "SL-T1=104.8");
        terminal.Open("Line round");

        Assert.Equal(("104.8", Level.Urgent), (terminal.Round.Rows[0].Text, terminal.Round.Rows[0].Check.Worst));
        Assert.Contains("1 urgent", terminal.Screen, StringComparison.Ordinal);
        Assert.DoesNotContain("9.94", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_opened_again_shows_a_value_as_it_was_put_right()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("9.94⏎⎋l⏎c⏎99.8⏎wrong digit⏎").Press("⎋⎋⎋⎋").Open("Line round");

        Assert.Equal("99.8", terminal.Round.Rows[0].Text);
        Assert.Null(terminal.Round.Rows[0].Check.Worst);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(40)] // at the next round, for which it counts then
    public void A_round_opened_again_shows_the_value_that_came_for_one_not_taken(double minutes)
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press("n1⏎⎋");
        var entry = terminal.Journal.Head.Seq;
        terminal.At(5 + minutes);
        Assert.NotNull(Checks.Writing.Correct(terminal.Desk, entry, Testing.Some.Reading("SL-T1", "99.8") with { At = terminal.Desk.Now }, "read after all", "op1").Record);

        terminal.Open("Line round");

        Assert.Equal("99.8", terminal.Round.Rows[0].Text);
    }

    [Fact]
    public void Words_that_Esc_drops_are_named()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("mleak at the pump! call⎋");

        Assert.Contains("not taken: leak at the pump! call", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_reading_is_seen_in_its_row_at_80_columns()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎s99.6⏎");

        Assert.Contains("second 99.6", terminal.Screen.Split('\n').First(l => l.Contains("SL-T1", StringComparison.Ordinal)), StringComparison.Ordinal);
    }
}
