using Logbook.Handover;
using Logbook.Handover.Tests;

namespace Logbook.Notes.Tests.BadShifts;

/// <summary>Bad shifts whose line was handed over with everything that can be said about it. People and numbers are invented.</summary>
internal static class Nights
{
    /// <summary>Green liquor flow lost at the shift change; the outgoing operator does not let go in the middle of it.</summary>
    public static BadLine LostFlowAtTheChange()
    {
        var line = new BadLine("2026-11-24T19:00-05:00").HeldBy("tal");
        line.At("2026-11-25T05:02-05:00").Round("hourly", "tal");
        line.At("2026-11-25T06:02-05:00").Round("hourly", "tal", "SL-F1=231", "SL-T1=102.7");
        line.At("2026-11-25T06:41-05:00").Round("hourly", "tal", "SL-F1=40", "SL-T1=103.6");
        line.Upset("tal", null, "green liquor flow to the slaker lost");
        line.State("tal", "lime-screw", "stopped", "by hand, no liquor");
        line.At("2026-11-25T06:50-05:00");
        BadLine.Took(Staying.NotYet(line.Desk, "tal", "1: slaker with lime and no liquor"));
        line.At("2026-11-25T07:20-05:00").State("tal", "slaker", "starting", "liquor back, no lime yet");
        line.Carry("tal", "action", "gl-pump", "why did the pump trip? electrician called 07:05", "2026-11-25T12:00-05:00");
        return line.At("2026-11-25T07:25-05:00");
    }

    /// <summary>Gas while a filter stands in acid; the holder is hurt and somebody takes the line at once.</summary>
    public static BadLine GasAndEmergencyRelief()
    {
        var line = new BadLine("2026-11-24T19:00-05:00").HeldBy("tal");
        line.Carry("tal", "wash", "wl-filter", "acid wash of the cloths", "2026-11-25T04:00-05:00", ("acid", "yes"), ("drain", "to the acid sump, tested"), ("told", "kiln, digester"));
        line.At("2026-11-25T01:10-05:00").State("tal", "wl-filter", "acid", "cloth wash");
        line.At("2026-11-25T02:31-05:00").Round("field", "har", SmallLine.At("2026-11-25T02:10-05:00"), "ST-H2S2=6.4", "ST-H2S1=1.2");
        line.At("2026-11-25T02:36-05:00");
        BadLine.Took(Relieving.Emergency(line.Desk, "har", "1: Tallow dizzy at the filters, ambulance called 02:33"));
        line.Carry("har", "action", "wl-filter", "area closed and barriered; nobody in without the gas procedure");
        line.Tell("har", "kiln", "H2S at the filters, area closed");
        return line.At("2026-11-25T06:30-05:00");
    }

    /// <summary>The power went and so did the holder; the next one finds nobody.</summary>
    public static BadLine PowerGoneAndNobodyThere()
    {
        var line = new BadLine("2026-11-24T19:00-05:00").HeldBy("tal");
        line.At("2026-11-25T03:12-05:00").Upset("tal", "2026-11-25T03:05-05:00", "no power on the line");
        foreach (var code in new[] { "slaker", "causticizer-1", "causticizer-2", "causticizer-3", "mud-pump", "classifier" })
        {
            line.State("tal", code, "stopped", "no power");
        }

        line.State("tal", "mud-tank", "stopped", "rake stands since 03:05, mud packs");
        line.At("2026-11-25T03:40-05:00");
        BadLine.Took(Relieving.Leave(line.Desk, "tal", "2: sent to the fire pumps"));
        line.At("2026-11-25T05:10-05:00");
        line.Open("qui");
        BadLine.Took(Accepting.Accept(line.Desk, line.Sign, new AcceptRequest("qui", ["rake of the mud tank", "tanks that overflow when power is back"], line.Right("qui")) { Unattended = "found the panel alone at 05:05, called Larkin" }));
        return line.At("2026-11-25T06:40-05:00");
    }

    /// <summary>Two entries that span the change: one count is old, the other permit is past its end.</summary>
    public static BadLine PermitsOverTheChange()
    {
        var line = new BadLine("2026-11-24T19:00-05:00").HeldBy("tal");
        line.At("2026-11-24T21:00-05:00").Carry("tal", "permit", "causticizer-2", "agitator gear inside", "2026-11-25T05:00-05:00", ("number", "5120"), ("inside", "2 by the attendant"));
        line.Carry("tal", "isolation", "causticizer-2", "agitator, 3 locks, card 77", null, ("permit", "5120"));
        line.At("2026-11-25T02:00-05:00").Carry("tal", "permit", "gl-filter", "shell inspection", "2026-11-25T12:00-05:00", ("number", "5121"));
        line.Carry("tal", "isolation", "gl-filter", "feed, drain and vent, 6 locks, card 78", null, ("permit", "5121"), ("proof", "zero at both gauges 02:10"));
        line.State("tal", "gl-filter", "out", "inspection");
        return line.At("2026-11-25T06:30-05:00");
    }
}
