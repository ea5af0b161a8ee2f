using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover.Tests;

/// <summary>Who was due, who was there, and how long.</summary>
public sealed class DutyTests
{
    private static RosterChange Change(string what, string person, string? replaced, string from, string to) =>
        new(what, person, replaced, SmallLine.At(from), SmallLine.At(to), null);

    // Operator one is of crew A, which works D on 2026-01-01 by DDNNoooo: days 1 and 2, nights 3 and 4.
    [Fact]
    public void A_swap_a_holiday_and_a_holdover_change_who_is_due()
    {
        using var line = new SmallLine("2026-01-01T08:00-05:00");
        var day = Calendar.ShiftAt(line.Desk.Site, SmallLine.At("2026-01-01T12:00-05:00"));
        var night = Calendar.ShiftAt(line.Desk.Site, SmallLine.At("2026-01-01T20:00-05:00"));

        Assert.Equal(["op1"], OnShift.DueBy(line.Desk.Site, day, []), StringComparer.Ordinal);
        Assert.Equal(["eng1"], OnShift.DueBy(line.Desk.Site, day, [Change("swap", "eng1", "op1", "2026-01-01T07:00-05:00", "2026-01-01T19:00-05:00")]), StringComparer.Ordinal);
        Assert.Empty(OnShift.DueBy(line.Desk.Site, day, [Change("holiday", "op1", null, "2026-01-01T00:00-05:00", "2026-01-02T00:00-05:00")]));
        Assert.Equal(["op3", "op1"], OnShift.DueBy(line.Desk.Site, night, [Change("holdover", "op1", null, "2026-01-01T19:00-05:00", "2026-01-01T21:00-05:00")]), StringComparer.Ordinal);
    }

    [Fact]
    public void Who_wrote_though_not_due_and_who_was_due_and_wrote_nothing_is_told()
    {
        using var line = new SmallLine("2026-01-01T06:00-05:00");
        line.Clock("2026-01-01T20:00-05:00").Remark("I am here instead");
        line.Clock("2026-01-02T08:00-05:00");

        var duties = ShiftDuty.Of(line.Desk, SmallLine.At("2026-01-01T07:00-05:00"), SmallLine.At("2026-01-02T07:00-05:00"));

        Assert.Contains("nothing written or signed: Operator one", duties[0].Differs, StringComparison.Ordinal);
        Assert.Contains("not due but there: Operator one", duties[1].Differs, StringComparison.Ordinal);
    }

    // Crew D works the night of 2026-01-01, crew A the day of the 2nd: operator one comes, operator three goes.
    [Theory]
    [InlineData("2026-01-02T06:30-05:00", "op1", null)]
    [InlineData("2026-01-02T04:30-05:00", "op1", "not due but there: Operator one")]
    [InlineData("2026-01-02T07:20-05:00", "op3", null)]
    [InlineData("2026-01-02T09:20-05:00", "op3", "not due but there: Operator three")]
    public void Who_comes_for_the_next_shift_or_goes_from_the_last_one_was_due(string at, string by, string? differs)
    {
        using var line = new SmallLine("2026-01-01T06:00-05:00");
        foreach (var (hour, who) in new[] { ("2026-01-01T20:00-05:00", "op3"), ("2026-01-02T12:00-05:00", "op1") }.Append((at, by)).OrderBy(w => SmallLine.At(w.Item1)))
        {
            Assert.Empty(Writing.Remark(line.Clock(hour).Desk, "here", null, null, who).Mistakes);
        }

        line.Clock("2026-01-03T08:00-05:00");
        var duties = ShiftDuty.Of(line.Desk, SmallLine.At("2026-01-01T19:00-05:00"), SmallLine.At("2026-01-02T19:00-05:00"));

        Assert.Equal(differs ?? "", string.Concat(duties.Select(d => d.Differs)));
    }

    [Fact]
    public void Shifts_in_a_row_end_with_a_day_and_a_half_off_and_a_holdover_makes_one_longer()
    {
        using var line = new SmallLine("2026-01-01T06:00-05:00");
        foreach (var at in new[] { "2026-01-01T12:00-05:00", "2026-01-05T12:00-05:00", "2026-01-06T12:00-05:00" })
        {
            line.Clock(at).Remark("on shift");
        }

        Writing.ChangeRoster(line.Desk, Change("holdover", "op1", null, "2026-01-06T19:00-05:00", "2026-01-06T21:00-05:00"), "op1");
        line.Clock("2026-01-07T08:00-05:00");

        var count = Assert.Single(WorkCount.Of(line.Desk));

        Assert.Equal(("op1", 2, 26.0, 14.0), (count.Person, count.InARow, count.Hours, count.Longest));
        Assert.Empty(WorkCount.Of(line.Clock("2026-01-08T10:00-05:00").Desk));
    }

    [Fact]
    public void Who_takes_over_before_the_shift_begins_has_not_worked_the_one_before()
    {
        using var flow = new FlowLine("2026-01-05T18:50-05:00").HeldBy("op1");
        flow.Line.Clock("2026-01-05T22:00-05:00").Remark("on shift");
        flow.Line.Clock("2026-01-06T07:20-05:00").Remark("left the last sample in the hood");

        var count = Assert.Single(WorkCount.Of(flow.Line.Clock("2026-01-06T08:30-05:00").Desk), c => c.Person == "op1");

        Assert.Equal((1, 12.0, SmallLine.At("2026-01-05T19:00-05:00")), (count.InARow, count.Hours, count.Since));
    }

    // A night across each change of the clocks: 11 hours in March, 13 in November (07:00 and 19:00 by the wall clock; the zone's rules of 2026).
    [Theory]
    [InlineData("2026-03-07T20:00-05:00", 11)]
    [InlineData("2026-10-31T20:00-04:00", 13)]
    public void Hours_are_those_that_passed_and_not_those_of_the_wall_clock(string at, double hours)
    {
        using var line = new SmallLine(SmallLine.At(at).AddHours(-3));
        line.Clock(at).Remark("on nights");
        line.Clock(SmallLine.At(at).AddHours(15));

        Assert.Equal(hours, Assert.Single(WorkCount.Of(line.Desk)).Hours);
    }

    [Fact]
    public void Changing_the_pattern_relabels_no_shift_of_the_past()
    {
        using var line = new SmallLine("2026-11-20T08:00-05:00");
        line.Clock("2026-11-24T12:00-05:00").Record("hourly", "SL-T1=101.0");
        var before = line.Desk.Store.Read().Last().Shift;
        line.Clock("2026-11-26T08:00-05:00").AdoptAnotherPattern();

        var noon = SmallLine.At("2026-11-24T12:00-05:00");

        Assert.NotEqual(before, Calendar.ShiftAt(line.Desk.Site, noon).Id, StringComparer.Ordinal);
        Assert.Equal(before, HandoverNote.Of(line.Desk, noon).ShiftId);
        Assert.All(line.Due("2026-11-24T10:00-05:00", "2026-11-24T14:00-05:00"), c => Assert.Equal(before, c.ShiftId));
        Assert.Contains(ShiftDuty.Of(line.Desk, noon, noon.AddHours(1)), d => d.Shift.Id == before);
        Assert.Contains(line.Desk.Store.Read(), r => r.Body is Entry && r.Shift == before);
    }
}
