using Logbook.Journal;

namespace Logbook.Handover.Tests;

public class HoldingTests
{
    [Fact]
    public void An_emergency_relief_takes_the_line_at_once_and_leaves_the_pages_to_be_read()
    {
        using var flow = new FlowLine("2026-11-25T02:00-05:00").HeldBy("op1");
        Staying.NotYet(flow.Desk, "op1", "1");

        var handed = Relieving.Emergency(flow.Desk, "op2", "1");

        Assert.NotNull(handed.Record);
        Assert.Equal("op2", flow.Holder);
        Assert.Equal(LineHeld.Pages, flow.Held.Unread, StringComparer.Ordinal);
        Assert.Contains("Operator two took the line without reading: still to open hazards, moving, changed", NowView.Of(flow.Desk).Unfinished, StringComparer.Ordinal);
        HandoverPages.Open(flow.Desk, "op2", "hazards");
        Assert.Equal(["moving", "changed"], flow.Held.Unread);
    }

    [Fact]
    public void An_emergency_reason_is_one_of_the_sites_with_more_words_if_need_be()
    {
        using var flow = new FlowLine("2026-11-25T02:00-05:00").HeldBy("op1");

        Assert.Equal("'tired' is none of the site's reasons; one of 1 injured or ill, 2 called away, 3 other; more words may follow after a colon",
            Assert.Single(Relieving.Emergency(flow.Desk, "op2", "tired").Mistakes).ToString());
        Assert.Equal("'other' says nothing by itself; other: and a few words", Assert.Single(Relieving.Emergency(flow.Desk, "op2", "3").Mistakes).ToString());
        Assert.Equal("called away: fire team", ((HandoverRelief)Relieving.Emergency(flow.Desk, "op2", "2: fire team").Record!.Body).Words);
    }

    [Fact]
    public void A_short_relief_ends_with_the_first_holder_or_in_full()
    {
        using var flow = new FlowLine("2026-11-25T02:00-05:00").HeldBy("op1");
        var since = flow.Held.Holder!.Since;
        flow.Line.Clock("2026-11-25T03:00-05:00");
        Assert.NotNull(Relieving.Short(flow.Desk, flow.Sign(), "op2", "watch the bowl").Record);
        Assert.Equal("Operator two holds the line since 03:00, short relief of Operator one", NowView.Of(flow.Desk).InCharge);

        Assert.Contains("Operator two took the line without reading: still to open hazards, moving, changed", NowView.Of(flow.Desk).Unfinished, StringComparer.Ordinal);
        HandoverPages.Open(flow.Desk, "op2", "hazards");
        Assert.Equal(["moving", "changed"], flow.Held.Unread);

        flow.Line.Clock("2026-11-25T03:59-05:00");
        Assert.NotNull(Relieving.Short(flow.Desk, flow.Sign(), "op1", "back").Record);
        Assert.Empty(flow.Held.Unread);
        Assert.Equal(("op1", since), (flow.Holder, flow.Held.Holder!.Since));
    }

    [Fact]
    public void After_an_hour_a_relief_is_no_short_one()
    {
        using var flow = new FlowLine("2026-11-25T02:00-05:00").HeldBy("op1");
        Relieving.Short(flow.Desk, flow.Sign(), "op2", "watch the bowl");
        flow.Line.Clock("2026-11-25T02:30-05:00");
        Relieving.Short(flow.Desk, flow.Sign(), "op3", "for op2, watch the bowl");
        flow.Line.Clock("2026-11-25T03:00-05:00");

        Assert.Contains("hand over in full", Relieving.Short(flow.Desk, flow.Sign(), "op1", "back").Refused, StringComparison.Ordinal);
        Assert.EndsWith("OVER AN HOUR: hand over in full", NowView.Of(flow.Desk).InCharge, StringComparison.Ordinal);
        flow.HandedTo("op1");
        Assert.Equal("op1", flow.Holder);
    }

    [Fact]
    public void Not_yet_keeps_the_line_until_it_is_prepared_anew()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        flow.OpenAll("op2");
        Assert.NotNull(Staying.NotYet(flow.Desk, "op1", "critical step running: slaker start").Record);

        Assert.StartsWith("not yet: critical step running: slaker start", flow.Accept("op2", "pump first").Refused, StringComparison.Ordinal);
        Assert.StartsWith("not yet:", Relieving.Short(flow.Desk, flow.Sign(), "op2", "x").Refused, StringComparison.Ordinal);
        flow.HandedTo("op2");
        Assert.Equal("op2", flow.Holder);
    }

    [Fact]
    public void A_refusal_leaves_the_holder_in_charge_and_a_supervisor_has_to_sign()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        var taken = flow.Held.ToCountersign[0].Seq;
        flow.Prepare("op1");
        var refused = Staying.Refuse(flow.Desk, "op2", "lime line not as written").Record!.Seq;

        Assert.Equal("op1", flow.Holder);
        Assert.Equal([taken, refused], flow.Held.ToCountersign.Select(t => t.Seq));
        Assert.Contains("only a supervisor", Countersigning.Countersign(flow.Desk, flow.Sign(), "eng1", refused, "talked").Refused, StringComparison.Ordinal);
        Assert.NotNull(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", refused, "walked it with both").Record);
        Assert.Equal([taken], flow.Held.ToCountersign.Select(t => t.Seq));
        Assert.Single(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", refused, "again").Mistakes);
    }

    [Fact]
    public void What_nobody_has_prepared_is_not_refused()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");

        Assert.Equal("Operator one has prepared nothing yet: there is no handover to refuse", Staying.Refuse(flow.Desk, "op2", "not as written").Refused);
        flow.Prepare("op1");
        Assert.NotNull(Staying.Refuse(flow.Desk, "op2", "not as written").Record);
    }

    [Fact]
    public void A_signature_without_a_number_falls_on_the_one_that_waits_and_on_none_when_more_do()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        var taken = flow.Held.ToCountersign[0].Seq;
        flow.Prepare("op1");
        var refused = Staying.Refuse(flow.Desk, "op2", "lime line not as written").Record!.Seq;

        var mistake = Assert.Single(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", null, "talked").Mistakes);
        Assert.Equal("2 wait for a signature: say which", mistake.Wrong);
        Assert.Contains($"{taken}: unattended handover, Operator one Wed 25 Nov 06:20 (#{taken}); {refused}: refused handover, Operator two Wed 25 Nov 06:20 (#{refused})", mistake.ToString(), StringComparison.Ordinal);
        Assert.Equal([taken, refused], flow.Held.ToCountersign.Select(t => t.Seq));

        Assert.NotNull(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", taken, "talked").Record);
        Assert.Equal($"signed for: refused handover, Operator two Wed 25 Nov 06:20 (#{refused})", Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", null, "walked it").Beside);
    }

    [Fact]
    public void The_audit_says_beside_each_handover_whether_a_supervisor_signed_for_it()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        flow.Prepare("op1");
        var refused = Staying.Refuse(flow.Desk, "op2", "lime line not as written").Record!.Seq;
        Assert.NotNull(Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", refused, "walked it with both").Record);

        var flags = Audit.Between(flow.Desk, flow.Desk.Now.AddHours(-1), flow.Desk.Now.AddHours(1), "refused", "unattended");

        Assert.Equal([("refused", true), ("unattended", false)], flags.Select(f => (f.Flag, f.Settled)));
        Assert.EndsWith($"countersigned by Supervisor one Wed 25 Nov 06:20: walked it with both (#{refused + 1})", flags[0].Text, StringComparison.Ordinal);
        Assert.EndsWith("not countersigned yet", flags[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_is_left_is_held_by_nobody_until_somebody_takes_it()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        Assert.NotNull(Relieving.Leave(flow.Desk, "op1", "1").Record);

        Assert.Null(flow.Holder);
        Assert.Equal("NOBODY HOLDS THE LINE since 06:20; call Supervisor one (sup1)", NowView.Of(flow.Desk).InCharge);
        Assert.NotNull(Asking.Called(flow.Desk, "op3", "sup1", "comes in ten minutes").Record);
        Assert.Equal("Supervisor one answered at 06:20: comes in ten minutes. crew C is due until 07:00", NowView.Of(flow.Desk).Unfinished[0]);
        Assert.Contains("--unattended", flow.Accept("op2", "pump first").Refused, StringComparison.Ordinal);
        flow.HeldBy("op2");
        Assert.Equal(["unattended", "left unattended", "unattended"], flow.Held.ToCountersign.Select(t => t.What), StringComparer.Ordinal);
    }

    [Fact]
    public void A_line_held_past_the_shifts_end_says_for_how_long()
    {
        using var flow = new FlowLine("2026-11-24T18:50-05:00").HeldBy("op1");

        Assert.DoesNotContain("past", NowView.Of(flow.Line.Clock("2026-11-25T07:00-05:00").Desk).InCharge, StringComparison.Ordinal);
        Assert.StartsWith("Operator one holds the line since 24 Nov 18:50, 14 hours, past the shift's end", NowView.Of(flow.Line.Clock("2026-11-25T08:51-05:00").Desk).InCharge, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_who_take_the_line_in_the_same_moment_do_not_both_hold_it()
    {
        using var flow = new FlowLine("2026-11-25T06:20-05:00").HeldBy("op1");
        var accepted = (HandoverAccepted)flow.HandedTo("op2").Desk.Store.Read(flow.Held.Holder!.Seq).First().Body;

        // Another terminal read the same state and wrote a moment later.
        flow.Desk.Write(accepted, flow.Desk.Now, "op3");

        Assert.Equal("op2", flow.Holder);
    }

    [Fact]
    public void Somebody_away_longer_than_the_longest_planned_break_takes_longer()
    {
        using var flow = new FlowLine("2026-11-10T06:20-05:00").HeldBy("op2");
        flow.Line.Clock("2026-11-14T19:00-05:00");
        Assert.Empty(TakeLonger.Away(flow.Desk, "op2"));

        flow.Line.Clock("2026-11-24T19:00-05:00");
        HandoverPages.Open(flow.Desk, "op2", "changed"); // being here now does not hide having been away

        Assert.StartsWith("Operator two was last here Tue 10 Nov 06:20, 14 days ago", Assert.Single(TakeLonger.Away(flow.Desk, "op2")), StringComparison.Ordinal);
    }
}
