using Logbook.Checks;

namespace Logbook.Handover.Tests;

/// <summary>What was said, typed or imported only afterwards stays a fact of the audit.</summary>
public sealed class SaidLaterTests
{
    private static readonly DateTimeOffset Morning = SmallLine.At("2026-11-24T11:30-05:00");
    private static readonly DateTimeOffset Night = SmallLine.At("2026-11-24T19:20-05:00");

    private static List<string> Flagged(SmallLine line, string flag) =>
        [.. Audit.Between(line.Desk, Morning, SmallLine.At("2026-11-24T18:30-05:00"), flag).Where(f => f.Round != "shift").Select(f => f.Text)];

    private static NoteLine WeekOf(SmallLine line) =>
        WeekNote.Of(line.Desk, Morning).Sections.Single(s => s.Id == "checks").Lines.Single(l => l.Text.StartsWith("Line round", StringComparison.Ordinal));

    [Fact]
    public void A_state_that_is_back_dated_makes_no_missed_check_disappear()
    {
        using var line = new SmallLine("2026-11-24T11:25-05:00");
        line.Clock(Night);
        var before = Flagged(line, "missed");
        var seq = Writing.ChangeState(line.Desk, "slaker", "out", SmallLine.At("2026-11-24T12:30-05:00"), null, "op1").Record!.Seq;

        // SL-L1 alone belongs to the slaker and is no safety point: 13:00 to 18:00.
        var later = Flagged(line, "entered-later");
        Assert.Equal(6, later.Count);
        Assert.Equal($"Line round Tue 24 Nov 13:00, 1 check not walked: Slaker out since 12:30, said later: typed 19:20 by Operator one (#{seq})", later[0]);
        Assert.Equal(before.Count(t => t.Contains("Line round", StringComparison.Ordinal)), Flagged(line, "missed").Count(t => t.Contains("Line round", StringComparison.Ordinal)));
        Assert.Contains("6 not walked and said later; missed or said later by crew", WeekOf(line).Text, StringComparison.Ordinal);
        Assert.Contains(HandoverNote.Of(line.Desk, Morning).Sections.Single(s => s.Id == "not-done").Lines, l => l.Label == "said later");
    }

    [Fact]
    public void An_upset_that_is_back_dated_makes_no_missed_check_disappear()
    {
        using var line = new SmallLine("2026-11-24T11:25-05:00");
        line.Clock(Night);
        var before = Flagged(line, "missed").Count;
        var totals = HandoverNote.Of(line.Desk, Morning).Sections.Single(s => s.Id == "not-done").Lines[^1].Text;
        var seq = Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T12:50-05:00"), "foam", "op1").Record!.Seq;
        Assert.Empty(Writing.EndUpset(line.Desk, SmallLine.At("2026-11-24T14:10-05:00"), null, "op1").Mistakes);

        Assert.Equal([$"UPSET from Tue 24 Nov 12:50 to Tue 24 Nov 14:10, declared Tue 24 Nov 19:20; foam. Operator one (#{seq}, #{seq + 1})"], Flagged(line, "upset"), StringComparer.Ordinal);
        string[] told = [.. Flagged(line, "missed").Where(t => t.Contains("declared afterwards", StringComparison.Ordinal))];
        Assert.Equal(2, told.Length);
        Assert.All(told, t => Assert.EndsWith($"all 3 checks: no reading in the window; upset from 12:50 to 14:10, declared afterwards at 19:20 by Operator one (#{seq})", t, StringComparison.Ordinal));
        Assert.Equal(before, Flagged(line, "missed").Count);
        Assert.DoesNotContain("said later;", WeekOf(line).Text, StringComparison.Ordinal);
        Assert.Equal(totals, HandoverNote.Of(line.Desk, Morning).Sections.Single(s => s.Id == "not-done").Lines[^1].Text);
        var one = Assert.Single(HandoverNote.Of(line.Desk, Morning).Sections.Single(s => s.Id == "not-done").Lines, l => l.Text.Contains("declared afterwards", StringComparison.Ordinal));
        Assert.Equal("missed", one.Label);
        Assert.Contains("not walked, 6 checks missed: Line round 13:00, 14:00; safety points: 0 of 2 read", one.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_said_in_time_stays_said_whatever_is_typed_later()
    {
        using var line = new SmallLine("2026-11-24T11:25-05:00");
        line.Clock("2026-11-24T12:35-05:00").State("slaker", "stopped");
        line.Clock("2026-11-24T12:52-05:00");
        Assert.Empty(Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T12:50-05:00"), "foam", "op1").Mistakes);
        line.Clock(Night);
        Assert.Empty(Writing.EndUpset(line.Desk, SmallLine.At("2026-11-24T14:10-05:00"), null, "op1").Mistakes);
        Assert.Empty(Writing.ChangeState(line.Desk, "slaker", "out", SmallLine.At("2026-11-24T12:40-05:00"), null, "op1").Mistakes);

        Assert.Empty(Flagged(line, "entered-later"));
        Assert.Equal(2, Flagged(line, "upset").Count(text => !text.StartsWith("UPSET", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_reason_that_was_given_in_time_is_not_covered_by_what_is_said_later()
    {
        using var line = new SmallLine("2026-11-24T11:25-05:00");
        line.Clock("2026-11-24T13:02-05:00").Record("hourly", "SL-T1=101.0", "SL-L1=-:no time", "WT-L=50");
        line.Clock(Night);
        Assert.Empty(Writing.ChangeState(line.Desk, "slaker", "out", SmallLine.At("2026-11-24T12:30-05:00"), null, "op1").Mistakes);

        Assert.Contains("not taken, no time", Assert.Single(Flagged(line, "not-taken")), StringComparison.Ordinal);
    }

    [Fact]
    public void Imported_values_of_the_past_are_entered_later_in_their_own_word()
    {
        using var line = new SmallLine("2026-11-23T11:25-05:00");
        line.Clock("2026-11-25T09:00-05:00");
        line.Record(new EntryRequest("op1", [SmallLine.Typed("SL-T1=101.0")]) { At = SmallLine.At("2026-11-24T12:00-05:00"), Imported = "past.csv" });

        Assert.Contains(": imported Wed 25 Nov 09:00, after its shift.", Assert.Single(Flagged(line, "entered-later")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sample_that_is_typed_before_its_window_closes_is_on_time_however_long_ago_it_was_read()
    {
        using var line = new SmallLine("2026-11-24T06:00-05:00");
        line.Clock("2026-11-24T16:53-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("CL-G=120")]) { Round = "shift", At = SmallLine.At("2026-11-24T15:04-05:00") });

        Assert.Equal(CheckState.Done, line.Due("2026-11-24T18:00-05:00", "2026-11-24T19:00-05:00").Single(c => c.Round == "shift").State);
    }

    [Fact]
    public void A_sample_that_is_typed_after_its_window_and_long_after_it_was_read_is_late()
    {
        using var line = new SmallLine("2026-11-24T06:00-05:00");
        line.Clock("2026-11-24T19:01-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("CL-G=120")]) { Round = "shift", At = SmallLine.At("2026-11-24T15:04-05:00") });

        Assert.Equal(CheckState.Late, line.Due("2026-11-24T18:00-05:00", "2026-11-24T19:00-05:00").Single(c => c.Round == "shift").State);
    }

    [Fact]
    public void Wider_limits_forgive_nothing_that_was_read_before_them()
    {
        using var line = new SmallLine("2026-11-24T06:00-05:00");
        line.Clock("2026-11-24T08:00-05:00").Record("hourly", "SL-T1=103.0", "SL-L1=16.4", "WT-L=50");
        line.Clock("2026-11-24T09:00-05:00").Record("hourly", "SL-T1=101.0", "SL-L1=16.4", "WT-L=50");
        line.Clock("2026-11-24T09:30-05:00").AdoptWiderLimit();
        line.Clock("2026-11-24T10:00-05:00").Record("hourly", "SL-T1=103.0", "SL-L1=16.4", "WT-L=50");
        line.Clock("2026-11-24T11:00-05:00");

        var rows = LimitUse.Of(line.Desk, SmallLine.At("2026-11-24T07:00-05:00"), line.Desk.Now).Where(r => r.Point == "SL-T1" && r.Limit.StartsWith("watch-high", StringComparison.Ordinal));

        Assert.Equal([("watch-high 102.6 degC", 2, 1, 1), ("watch-high 103.1 degC", 1, 0, 0)], rows.Select(r => (r.Limit, r.Readings, r.Beyond, r.Times)));
    }

    [Fact]
    public void An_upset_of_the_shift_stands_under_not_normal_open_and_when_it_is_over()
    {
        using var line = new SmallLine("2026-11-24T12:00-05:00");
        line.Clock("2026-11-24T12:52-05:00");
        var begun = Writing.BeginUpset(line.Desk, SmallLine.At("2026-11-24T12:50-05:00"), "foam in the classifier", "op1").Record!.Seq;

        NoteLine Upset() => Assert.Single(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines, l => l.Label == "upset");
        Assert.Equal($"since 12:50, NOT OVER; foam in the classifier. Operator one (#{begun})", Upset().Text);

        var coming = HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "coming").Lines.Single(l => l.Label == "rounds").Text;
        Assert.Equal("while the upset lasts safety points only: Line round 13:00 and 17 more to 25 Nov 06:00; Field walk 16:00 and 3 more to 25 Nov 04:00", coming);

        line.Clock("2026-11-24T14:12-05:00");
        var ended = Writing.EndUpset(line.Desk, SmallLine.At("2026-11-24T14:10-05:00"), "flow back", "op2").Record!.Seq;
        Assert.Equal($"from 12:50 to 14:10; foam in the classifier; flow back. Operator one, Operator two (#{begun}, #{ended})", Upset().Text);
        Assert.Contains("Samples of the shift", HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "coming").Lines.Single(l => l.Label == "rounds").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_taken_before_the_change_of_shift_and_typed_in_time_after_it_is_not_entered_later()
    {
        using var line = new SmallLine("2026-11-23T11:25-05:00");
        line.Clock("2026-11-24T19:04-05:00");
        EntryRequest At(string time) => new("op1", [SmallLine.Typed("SL-T1=101.0"), SmallLine.Typed("SL-L1=18.6"), SmallLine.Typed("WT-L=50")]) { At = SmallLine.At(time), Round = "hourly" };
        line.Record(At("2026-11-24T18:54-05:00"));
        var late = line.Record(At("2026-11-24T16:54-05:00"));

        Assert.Equal([late], Audit.Between(line.Desk, Morning, SmallLine.At("2026-11-24T19:30-05:00"), "entered-later").Select(f => f.Seq!.Value));
    }
}
