using Logbook.Checks;

namespace Logbook.Handover.Tests;

public class DueListTests
{
    private const string Begin = "2026-11-24T06:00-05:00";

    [Fact]
    public void A_reading_in_the_window_is_done_and_names_its_entry()
    {
        using var line = new SmallLine(Begin);
        var seq = line.Clock("2026-11-24T08:10-05:00").Record("hourly", "SL-T1=101.0");

        var check = Single(line, "SL-T1", "08:00");

        Assert.Equal((CheckState.Done, seq, "op1"), (check.State, check.Seq, check.By));
        Assert.Equal(SmallLine.At("2026-11-24T08:10-05:00"), check.TakenAt);
    }

    [Theory]
    [InlineData("07:45", "08:00", CheckState.Done)]
    [InlineData("07:44", "08:00", CheckState.Missed)] // nearest to 08:00 and before its window: it answers nothing
    [InlineData("08:15", "08:00", CheckState.Done)]
    [InlineData("08:16", "08:00", CheckState.Late)]
    [InlineData("08:30", "08:00", CheckState.Late)] // as far from 09:00: a tie goes to the earlier
    [InlineData("08:31", "08:00", CheckState.Missed)]
    public void A_reading_belongs_to_the_nearest_slot_and_counts_by_its_window(string readAt, string slot, CheckState expected)
    {
        using var line = new SmallLine(Begin);
        line.Clock($"2026-11-24T{readAt}-05:00").Record("hourly", "SL-T1=101.0");
        line.Clock("2026-11-24T10:30-05:00");

        Assert.Equal(expected, Single(line, "SL-T1", slot).State);
    }

    [Theory]
    [InlineData("07:44", CheckState.Coming)]
    [InlineData("07:45", CheckState.Due)]
    [InlineData("08:15", CheckState.Due)]
    [InlineData("08:16", CheckState.Missed)]
    public void A_slot_without_a_reading_is_coming_then_due_then_missed(string now, CheckState expected)
    {
        using var line = new SmallLine(Begin);
        line.Clock($"2026-11-24T{now}-05:00");

        Assert.Equal(expected, Single(line, "SL-T1", "08:00").State);
    }

    [Fact]
    public void What_was_typed_long_after_its_reading_is_late_and_says_when()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T09:20-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("SL-L1=16.0")]) { Round = "hourly", At = SmallLine.At("2026-11-24T08:05-05:00") });

        var check = Single(line, "SL-L1", "08:00");

        Assert.Equal(CheckState.Late, check.State);
        Assert.Equal("read 08:05, typed later, 09:20", check.Why);
    }

    [Fact]
    public void A_value_with_an_earlier_time_makes_no_missed_check_good_in_silence()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T08:20-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("SL-L1=16.0")]) { Round = "hourly", At = SmallLine.At("2026-11-24T08:05-05:00") });

        Assert.Equal((CheckState.Late, "read 08:05, typed later, 08:20"), (Single(line, "SL-L1", "08:00").State, Single(line, "SL-L1", "08:00").Why));
    }

    [Fact]
    public void A_walk_with_a_sheet_is_on_time_when_it_is_typed_within_half_an_hour_of_its_end()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T08:20-05:00").Record(Walk("08:00", "08:05", "SL-T1=101.0") with { Round = "hourly" });

        Assert.Equal(CheckState.Done, Single(line, "SL-T1", "08:00").State);
    }

    [Fact]
    public void A_field_walk_counts_by_when_it_began_when_it_is_typed_within_its_length_and_half_an_hour()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T09:20-05:00").Record(Walk("08:25", "08:50", "SL-EYE=1", "ST-H2S=0.2"));

        Assert.Equal(CheckState.Done, Single(line, "SL-EYE", "08:00", "field").State);
    }

    [Fact]
    public void A_field_walk_that_is_typed_too_late_stays_typed_later()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T09:21-05:00").Record(Walk("08:25", "08:50", "SL-EYE=1"));

        Assert.Equal(CheckState.Late, Single(line, "SL-EYE", "08:00", "field").State);
    }

    [Fact]
    public void A_field_walk_is_not_missed_while_it_can_still_be_typed_on_time()
    {
        using var line = new SmallLine(Begin);

        Assert.Equal(CheckState.Due, Single(line.Clock("2026-11-24T09:25-05:00"), "SL-EYE", "08:00", "field").State);
        Assert.Equal(CheckState.Missed, Single(line.Clock("2026-11-24T09:26-05:00"), "SL-EYE", "08:00", "field").State);
    }

    [Fact]
    public void Not_taken_keeps_its_reason_and_a_later_value_in_the_window_replaces_it()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T08:02-05:00").Record("hourly", "SL-T1=-:no time");
        var first = Single(line, "SL-T1", "08:00");
        line.Clock("2026-11-24T08:12-05:00").Record("hourly", "SL-T1=101.1");

        Assert.Equal((CheckState.NotTaken, "no time"), (first.State, first.Why));
        Assert.Equal(CheckState.Done, Single(line, "SL-T1", "08:00").State);
    }

    [Fact]
    public void A_value_given_afterwards_by_correction_is_late_never_on_time()
    {
        using var line = new SmallLine(Begin);
        var seq = line.Clock("2026-11-24T08:02-05:00").Record("hourly", "SL-T1=-:no time", "SL-L1=-:no time");
        line.Clock("2026-11-24T09:40-05:00").Correct(seq, "SL-L1=16.0", "it was read, but on paper");
        line.Correct(seq, "SL-T1=101.0", "it was read, but on paper");

        Assert.Equal(CheckState.Late, Single(line, "SL-L1", "08:00").State);
        Assert.Equal((CheckState.Missed, true), (Single(line, "SL-T1", "08:00").State, Single(line, "SL-T1", "08:00").TypedLater));
    }

    [Fact]
    public void A_corrected_value_stays_as_punctual_as_it_was()
    {
        using var line = new SmallLine(Begin);
        var seq = line.Clock("2026-11-24T08:02-05:00").Record("hourly", "SL-T1=110.1");
        line.Clock("2026-11-24T11:40-05:00").Correct(seq, "SL-T1=101.1", "digits swapped");

        Assert.Equal((CheckState.Done, seq), (Single(line, "SL-T1", "08:00").State, Single(line, "SL-T1", "08:00").Seq));
    }

    [Fact]
    public void Checks_of_stopped_equipment_do_not_apply_except_safety_points()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T08:30-05:00").State("slaker", "stopped", "feeder broke");
        line.Clock("2026-11-24T10:30-05:00").State("slaker", "running");
        line.Clock("2026-11-24T12:30-05:00");

        Assert.Equal(CheckState.Missed, Single(line, "SL-L1", "08:00").State);
        Assert.Equal((CheckState.NotApplicable, "Slaker stopped since 08:30"), (Single(line, "SL-L1", "09:00").State, Single(line, "SL-L1", "09:00").Why));
        Assert.Equal(CheckState.Missed, Single(line, "SL-T1", "09:00").State);
        Assert.Equal(CheckState.Missed, Single(line, "SL-L1", "11:00").State);
    }

    [Fact]
    public void The_state_at_the_due_time_is_found_however_long_ago_it_began()
    {
        using var line = new SmallLine("2026-10-01T06:00-04:00");
        line.State("slaker", "stopped");
        line.Clock("2026-11-24T09:30-05:00").State("slaker", "running");
        line.Clock("2026-11-24T12:30-05:00");

        Assert.Equal(CheckState.NotApplicable, Single(line, "SL-L1", "08:00").State);
        Assert.Equal(CheckState.Missed, Single(line, "SL-L1", "10:00").State);
    }

    [Fact]
    public void A_reading_without_a_round_answers_the_nearest_slot_that_asks_for_its_point()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T08:05-05:00").Record(null, "SL-T1=101.0", "SL-EYE=1");

        Assert.Equal(CheckState.Done, Single(line, "SL-T1", "08:00").State);
        Assert.Equal(CheckState.Done, Single(line, "SL-EYE", "08:00", "field").State);
    }

    [Fact]
    public void A_sample_of_the_shift_counts_at_any_time_of_the_shift()
    {
        using var line = new SmallLine(Begin);
        line.Clock("2026-11-24T07:20-05:00").Record("shift", "CL-G=120");

        var checks = line.Due("2026-11-24T07:00-05:00", "2026-11-25T07:00-05:00").Where(c => c.Round == "shift").ToList();

        Assert.Equal([CheckState.Done, CheckState.Coming], checks.Select(c => c.State));
    }

    [Fact]
    public void Nothing_is_missed_before_the_log_began()
    {
        using var line = new SmallLine("2026-11-24T09:50-05:00");
        line.Clock("2026-11-24T12:00-05:00");

        var checks = line.Due("2026-11-23T00:00-05:00", "2026-11-24T12:00-05:00");

        Assert.Equal(SmallLine.At("2026-11-24T10:00-05:00"), checks[0].DueAt);
    }

    [Fact]
    public void A_round_that_was_put_in_force_later_is_not_missed_before_that()
    {
        using var line = new SmallLine("2026-11-23T06:00-05:00");
        line.Clock("2026-11-24T09:40-05:00").AdoptAnotherRound();
        line.Clock("2026-11-24T12:40-05:00");

        var extra = line.Due("2026-11-24T07:00-05:00", "2026-11-24T12:00-05:00").Where(c => c.Round == "extra").Select(c => c.DueAt);

        Assert.Equal([SmallLine.At("2026-11-24T10:00-05:00"), SmallLine.At("2026-11-24T11:00-05:00")], extra);
        Assert.Equal(CheckState.Missed, Single(line, "SL-T1", "08:00").State);
    }

    private static EntryRequest Walk(string from, string to, params string[] readings) => new("op1", [.. readings.Select(SmallLine.Typed)])
    {
        Round = "field",
        WalkStart = SmallLine.At($"2026-11-24T{from}-05:00"),
        WalkEnd = SmallLine.At($"2026-11-24T{to}-05:00"),
    };

    private static DueCheck Single(SmallLine line, string point, string dueAt, string round = "hourly") => Assert.Single(
        line.Due("2026-11-24T00:00-05:00", "2026-11-25T00:00-05:00"),
        c => c.Round == round && c.Point == point && c.DueAt == SmallLine.At($"2026-11-24T{dueAt}-05:00"));
}
