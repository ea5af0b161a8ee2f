namespace Logbook.Handover.Tests;

/// <summary>The troubled night, handed over with everything that can stand on a note: relief, question, reservation, a correction afterwards.</summary>
internal static class SignedNight
{
    public static FlowLine Write()
    {
        var flow = new FlowLine(TroubledNight.Write());
        flow.Line.Clock("2026-11-25T06:41-05:00");
        Relieving.Emergency(flow.Desk, "op2", "2: fire team");
        flow.Line.Clock("2026-11-25T06:44-05:00");
        PeopleChanges.SetPin(flow.Desk, flow.Sign(), "op2", "sup1", () => FlowLine.Pin);
        Countersigning.Countersign(flow.Desk, flow.Sign(), "sup1", null, "talked with both");
        Prepare(flow);
        flow.Line.Clock("2026-11-25T06:50-05:00").Remark("hosed down");
        var asked = Asking.Ask(flow.Desk, "op3", "lime rate now?", null).Record!.Seq;
        Asking.Reply(flow.Desk, "op3", asked, "16.4, not higher before the engineer says so", "op2");
        flow.OpenAll("op3");
        flow.Line.Clock("2026-11-25T06:57-05:00");
        var accepted = flow.Accept(new AcceptRequest("op3", ["flow by hand first, 07:00", "tank count with the attendant"], flow.RightAnswers("op3")) { Reservation = "acid not checked; asking the laboratory 07:15" });
        Assert.NotNull(accepted.Record);
        flow.Line.Clock("2026-11-25T08:10-05:00").Correct(20, "WT-L=76.5", "read a line too low");
        return flow;
    }

    private static void Prepare(FlowLine flow)
    {
        var declared = FlowLine.All("checked");
        declared["acid"] = "not-checked";
        var prepared = Preparing.Prepare(
            flow.Desk, flow.Sign(), new PrepareRequest("op2", declared, ["if the flow falls under 240, then stop the lime, site procedure SL-4"], ["bowl may climb when lime goes back up"]));
        Assert.NotNull(prepared.Record);
    }
}
