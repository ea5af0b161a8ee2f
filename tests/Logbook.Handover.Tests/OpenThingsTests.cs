using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Handover.Tests;

/// <summary>Orders, departments, upsets, answers, the clock, search and links.</summary>
public sealed class OpenThingsTests
{
    private static IEnumerable<NoteLine> Section(SmallLine line, string id) => HandoverNote.Of(line.Desk, line.Desk.Now).Sections.Single(s => s.Id == id).Lines;

    [Fact]
    public void An_order_names_who_has_read_it_and_who_has_not()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var order = Writing.GiveOrder(line.Desk, "lime feed at most 16.4 t/h", null, "eng1").Record!.Seq;
        Assert.Contains(OrderRow.Of(line.Desk), r => r is { Person: "op1", SeenAt: null });

        Assert.Empty(Writing.SeeOrder(line.Desk, order, "op1").Mistakes);

        Assert.Contains(OrderRow.Of(line.Desk), r => r.Id == order && r.Person == "op1" && r.SeenAt == line.Desk.Now);
        Assert.Contains("Read by Operator one 08:00", Assert.Single(Section(line, "orders")).Text, StringComparison.Ordinal);
        Assert.Single(Writing.SeeOrder(line.Desk, order, "op1").Mistakes);
        Assert.Single(Writing.SeeOrder(line.Desk, order + 5, "op1").Mistakes);
    }

    [Fact]
    public void An_order_that_has_ended_stands_no_longer()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        Writing.GiveOrder(line.Desk, "watch the bowl", SmallLine.At("2026-11-24T20:00-05:00"), "eng1");

        Assert.Single(NowView.Of(line.Desk).Orders);
        Assert.Empty(NowView.Of(line.Clock("2026-11-24T20:00-05:00").Desk).Orders);
    }

    [Fact]
    public void An_order_is_withdrawn_by_a_new_record_and_who_had_read_it_sees_that()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var order = Writing.GiveOrder(line.Desk, "hold the lime at 16.4 t/h", null, "eng1").Record!.Seq;
        Writing.SeeOrder(line.Desk, order, "op1");
        Assert.Contains("withdrawn", Assert.Single(Writing.WithdrawOrder(line.Desk, order, " ", "eng1").Mistakes).Wrong, StringComparison.Ordinal);
        line.Clock("2026-11-24T21:00-05:00");
        var notTheirs = Assert.Single(Writing.WithdrawOrder(line.Desk, order, "the screw is mended", "op1").Mistakes);
        Assert.Equal(($"order {order} is not withdrawn by op1", "eng1, who gave it, an engineer or a supervisor withdraws it"), (notTheirs.Wrong, notTheirs.Accepted));
        Writing.GiveOrder(line.Desk, "look at the screw each hour", null, "eng1");

        var end = Writing.WithdrawOrder(line.Desk, order, "the screw is mended", "sup1").Record!.Seq;

        var now = NowView.Of(line.Desk);
        Assert.Single(now.Orders);
        Assert.True(Assert.Single(now.Withdrawn).EndIsNewTo("op1"));
        Assert.False(now.Withdrawn[0].EndIsNewTo("op2"));
        Assert.DoesNotContain(OrderRow.Of(line.Desk), r => r.Id == order);
        Assert.Equal((end, "sup1", "the screw is mended"), OrderRow.Of(line.Desk, withdrawn: true).Where(r => r.Id == order).Select(r => (r.Withdrawn!.Seq, r.Withdrawn.By, r.Withdrawn.Why)).Distinct().Single());
        var unread = Assert.Single(Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), "order-unread"), f => f.Text.StartsWith($"Order {order},", StringComparison.Ordinal));
        Assert.Contains("the screw is mended. Not read before that by Operator two", unread.Text, StringComparison.Ordinal);
        var ended = Section(line, "orders").First();
        Assert.Equal($"ended {order}", ended.Label);
        Assert.Equal($"WITHDRAWN: hold the lime at 16.4 t/h. Given by Engineer one 20:00, withdrawn by Supervisor one 21:00: the screw is mended. Not read yet by Operator one. (#{end})", ended.Text);
        Assert.Equal($"Order WITHDRAWN, \"hold the lime at 16.4 t/h\" (#{order}): the screw is mended", LogLine.Of(line.Desk, line.Desk.Store.Read(end).First()).Words);
        Assert.Contains(Since.Of(line.Desk, "op2").Changes, c => c.What == "order" && c.Seq == end);
        Assert.Single(Writing.WithdrawOrder(line.Desk, order, "again", "sup1").Mistakes);
        Assert.Single(Writing.SeeOrder(line.Desk, order, "op2").Mistakes);
        Assert.Empty(Writing.SeeOrder(line.Desk, order, "op1").Mistakes);
        Assert.Empty(NowView.Of(line.Desk).Withdrawn);
    }

    [Fact]
    public void A_note_to_a_department_stays_open_until_a_named_person_acknowledges_it()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var note = Writing.TellDepartment(line.Desk, "recovery boiler", "weak wash will be weak from 10:00", "op1").Record!.Seq;

        Assert.Contains(Section(line, "still-open"), l => l.Label == "told" && l.Text.StartsWith("recovery boiler: weak wash", StringComparison.Ordinal));
        Assert.Single(Writing.Acknowledge(line.Desk, note, " ", "", "op1").Mistakes);
        Assert.Empty(Writing.Acknowledge(line.Desk, note, "N. Field", "will watch the density", "op1").Mistakes);
        Assert.Empty(line.Desk.State.Departments);
        Assert.Contains("by N. Field", LogLine.Of(line.Desk, line.Desk.Store.Read().Last()).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void In_an_upset_rounds_are_one_line_and_safety_points_stay_due()
    {
        using var line = new SmallLine("2026-11-24T18:00-05:00");
        line.Clock("2026-11-24T20:10-05:00"); // while the round of 20:00 could still be read
        Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T19:50-05:00"), "slaker boiling over", "op1");
        line.Clock("2026-11-24T22:30-05:00");
        Assert.Empty(Writing.EndUpset(line.Desk, SmallLine.At("2026-11-24T22:20-05:00"), null, "op1").Mistakes);

        var checks = line.Due("2026-11-24T20:00-05:00", "2026-11-24T22:10-05:00").Where(c => c.Round == "hourly").ToList();

        Assert.All(checks.Where(c => c.Point != "SL-T1"), c => Assert.Equal((CheckState.NotApplicable, true), (c.State, c.Upset)));
        Assert.All(checks.Where(c => c.Point == "SL-T1"), c => Assert.Equal(CheckState.Missed, c.State));
        var upset = Assert.Single(Section(line, "not-done"), l => l.Label == "upset");
        Assert.Contains("not walked: Line round 20:00 to 22:00 (3); safety points: 0 of 3 read", upset.Text, StringComparison.Ordinal);
        var audited = Audit.Between(line.Desk, SmallLine.At("2026-11-24T19:30-05:00"), line.Desk.Now, "upset");
        Assert.Equal(3, audited.Count(f => f.Round is not null));
        Assert.StartsWith("UPSET ", Assert.Single(audited, f => f.Round is null).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_that_was_walked_but_for_a_reading_when_the_upset_came_is_not_told_as_not_walked()
    {
        using var line = new SmallLine("2026-11-24T18:00-05:00");
        line.Clock("2026-11-24T19:58-05:00").Record("hourly", "SL-T1=101.0", "SL-L1=18.6");
        line.Clock("2026-11-24T20:05-05:00");
        Assert.Empty(Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T20:00-05:00"), "lime screw tripped", "op1").Mistakes);
        line.Clock("2026-11-24T21:30-05:00");

        var upset = Assert.Single(Section(line, "not-done"), l => l.Label == "upset").Text;
        Assert.Contains("not walked: Line round 21:00; not read in Line round 20:00: WT-L; safety points: 1 of 2 read, MISSED SL-T1 21:00", upset, StringComparison.Ordinal);
    }

    [Fact]
    public void Safety_points_that_were_missed_in_an_upset_stand_by_name_with_it_and_the_round_is_not_missed_too()
    {
        using var line = new SmallLine("2026-11-24T18:00-05:00");
        line.Clock("2026-11-24T19:55-05:00");
        Assert.Empty(Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T19:50-05:00"), "slaker boiling over", "op1").Mistakes);
        line.Clock("2026-11-24T21:01-05:00").Record("hourly", "SL-T1=101.0");
        line.Clock("2026-11-24T22:30-05:00");

        Assert.Contains("not walked: Line round 20:00 to 22:00 (3); safety points: 1 of 3 read, MISSED SL-T1 20:00, 22:00", Assert.Single(Section(line, "not-done"), l => l.Label == "upset").Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Section(line, "not-done"), l => l.Label == "missed" && l.Text.StartsWith("Line round", StringComparison.Ordinal) && l.Text.Contains("20:00", StringComparison.Ordinal));
        Assert.All(Audit.Between(line.Desk, SmallLine.At("2026-11-24T19:59-05:00"), line.Desk.Now, "missed").Where(f => f.Round == "hourly"), f => Assert.DoesNotContain("all", f.Text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("lime screw tripped", "Lime screw tripped.", "; lime screw tripped. Operator one")]
    [InlineData("lime screw tripped", "lime screw tripped, shear pin renewed", "; lime screw tripped, shear pin renewed. Operator one")]
    [InlineData("lime screw tripped", "shear pin renewed", "; lime screw tripped; shear pin renewed. Operator one")]
    public void What_the_end_of_an_upset_repeats_is_said_once(string begin, string end, string said)
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T19:50-05:00"), begin, "op1");
        line.Clock("2026-11-24T22:30-05:00");
        Assert.Empty(Writing.EndUpset(line.Desk, SmallLine.At("2026-11-24T22:20-05:00"), end, "op1").Mistakes);

        Assert.Contains(said, Assert.Single(Section(line, "not-normal"), l => l.Label == "upset").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_urgent_finding_waits_for_its_answer_even_when_it_is_over()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var urgent = line.Record("hourly", "SL-T1=103.5");
        line.Clock("2026-11-24T08:20-05:00").Record(null, "SL-T1=101.0");

        Assert.Contains(Section(line, "still-open"), l => l.Label == "answer" && l.Text.Contains($"{urgent}.1", StringComparison.Ordinal));
        Assert.Single(Writing.Answer(line.Desk, $"{urgent}.9", "nothing", "op1").Mistakes);
        Assert.Single(Writing.Answer(line.Desk, "x", "nothing", "op1").Mistakes);
        Assert.Empty(Writing.Answer(line.Desk, $"{urgent}.1", "lime surged; cut; supervisor told", "op1").Mistakes);
        Assert.DoesNotContain(Section(line, "still-open"), l => l.Label == "answer");
    }

    [Fact]
    public void A_correction_that_takes_the_urgent_value_back_needs_no_answer()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var entry = line.Record("hourly", "SL-T1=112.0");
        Assert.NotEmpty(line.Desk.State.Unanswered);

        line.Correct(entry, "SL-T1=102.0", "digits");

        Assert.Empty(line.Desk.State.Unanswered);
    }

    [Fact]
    public void A_clock_that_jumps_back_is_recorded_at_the_next_write_and_shown_until_somebody_has_looked()
    {
        var clock = new WallClock(SmallLine.At("2026-11-24T08:00-05:00"));
        var desk = Some.Desk(clock);
        Writing.Remark(desk, "before", null, null, "op1");
        clock.Now = SmallLine.At("2026-11-24T06:00-05:00");
        Writing.Remark(desk, "after", null, null, "op1");

        var jump = Assert.Single(NowView.Of(desk).ClockJumps);
        Assert.Equal((SmallLine.At("2026-11-24T08:00-05:00"), SmallLine.At("2026-11-24T06:00-05:00")), (jump.Before, jump.After));
        Assert.Equal(["site", "remark", "clock", "remark"], desk.Store.Read().Select(r => r.Kind), StringComparer.Ordinal);
        Assert.Contains(HandoverNote.Of(desk, desk.Now).Sections.Single(s => s.Id == "still-open").Lines, l => l.Label == "clock");

        Writing.Remark(desk, "again", null, null, "op1");
        Assert.Single(desk.State.ClockJumps);
        Assert.Empty(Writing.AcknowledgeClock(desk, null, "battery changed", "eng1").Mistakes);
        Assert.Empty(NowView.Of(desk).ClockJumps);
    }

    /// <summary>A clock that a hand may set back.</summary>
    private sealed class WallClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override DateTimeOffset GetUtcNow() => Now.ToUniversalTime();
    }

    [Fact]
    public void The_hour_that_comes_twice_is_no_jump_of_the_clock()
    {
        using var line = new SmallLine("2026-11-01T01:50-04:00");
        line.Remark("the first time");
        line.Clock("2026-11-01T01:05-05:00").Remark("the second time");

        Assert.Empty(line.Desk.State.ClockJumps);
    }

    [Fact]
    public void Every_record_that_belongs_to_an_item_is_found_from_any_of_them()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var other = line.Remark("something else");
        var item = line.Carry("action", "slaker", "tighten the bolt");
        var words = Writing.Remark(line.Desk, "bolt ordered", null, item, "op1").Record!.Seq;
        var look = Writing.ConfirmCarried(line.Desk, new CarryConfirmed(item, true, null, new Dictionary<string, string>(StringComparer.Ordinal), null), "op1").Record!.Seq;
        var end = line.Close(item, "done");

        Assert.Equal([item, words, look, end], RecordLinks.About(line.Desk, look).Select(r => r.Seq));
        Assert.Equal([other], RecordLinks.About(line.Desk, other).Select(r => r.Seq));
    }

    [Fact]
    public void The_begin_of_an_upset_and_its_end_belong_together()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var begin = Writing.BeginUpset(line.Desk, line.Desk.Now, "gas", "op1").Record!.Seq;
        line.Remark("all clear");
        line.Clock("2026-11-24T21:00-05:00");
        var end = Writing.EndUpset(line.Desk, line.Desk.Now, null, "op1").Record!.Seq;

        Assert.Equal([begin, end], RecordLinks.About(line.Desk, begin).Select(r => r.Seq));
        Assert.Equal([begin, end], RecordLinks.About(line.Desk, end).Select(r => r.Seq));
    }

    [Fact]
    public void Search_finds_records_that_hold_every_word()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var bolt = line.Remark("guard bolt is loose", "slaker");
        line.Remark("guard painted");

        Assert.Equal([bolt], Search.Of(line.Desk, "BOLT guard", DateTimeOffset.MinValue, DateTimeOffset.MaxValue).Select(l => l.Seq));
    }

    [Fact]
    public void A_person_is_told_what_changed_since_their_last_shift_and_nothing_older()
    {
        using var line = new SmallLine("2026-11-22T08:00-05:00");
        line.State("wl-filter", "standby");
        line.Clock("2026-11-22T10:00-05:00").Record("hourly", "SL-T1=101.0");
        line.Clock("2026-11-23T10:00-05:00");
        var filter = Writing.ChangeState(line.Desk, "wl-filter", "running", null, "back", "eng1").Record!.Seq;
        line.Clock("2026-11-24T08:00-05:00").Remark("I am back");

        var since = Since.Of(line.Desk, "op1");

        Assert.Equal(SmallLine.At("2026-11-22T10:00-05:00"), since.LastHere);
        Assert.Equal([filter], since.Changes.Select(c => c.Seq));
        Assert.Equal("wl-filter", since.Changes[0].On);
    }

    [Fact]
    public void The_third_time_in_fourteen_days_is_said_once()
    {
        using var line = new SmallLine("2026-11-10T08:00-05:00");
        for (var day = 0; day < 3; day++)
        {
            line.Clock(SmallLine.At("2026-11-12T09:00-05:00").AddDays(day)).Record("hourly", "SL-L1=-:instrument faulty");
            line.Clock(SmallLine.At("2026-11-12T10:00-05:00").AddDays(day)).Record("hourly", "SL-L1=16.0");
        }

        var again = Assert.Single(Audit.Between(line.Desk, SmallLine.At("2026-11-10T08:00-05:00"), line.Desk.Now, "recurrent"));

        Assert.Equal("SL-L1", again.Point);
        Assert.Contains("instrument faulty: 3rd time in 14 days", again.Text, StringComparison.Ordinal);
    }
}
