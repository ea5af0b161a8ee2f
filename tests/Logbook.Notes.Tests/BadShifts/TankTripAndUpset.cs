using Logbook.Checks;
using Logbook.Handover;
using Logbook.Handover.Tests;

namespace Logbook.Notes.Tests.BadShifts;

/// <summary>Someone in a tank, a trip defeated, an upset at the slaker, and a handover with a reservation.</summary>
internal static class TankTripAndUpset
{
    public static BadLine Write()
    {
        var line = new BadLine("2026-11-20T08:00-05:00").HeldBy("tal");
        Evening(line);
        Upset(line);
        Morning(line);
        line.At("2026-11-25T06:31-05:00").Prepare("tal", ["if the flow falls under 240: procedure SL-4, call Larkin"], ["bowl may climb when lime goes back up", "sticking valve"], "acid=not-checked");
        line.At("2026-11-25T06:49-05:00").Read("qui", line.Desk.State.Orders[^1].Id);
        var asked = Asking.Ask(line.Desk, "qui", "Lime rate now?", null).Record!.Seq;
        BadLine.Took(Asking.Reply(line.Desk, "qui", asked, "16.4, do not raise before the engineer says so.", "tal"));
        return line.At("2026-11-25T06:57-05:00").Accept("qui", "acid not checked; asking the laboratory 07:15", "flow by hand first, 07:00", "tank count with the attendant", "ask who cleared the 10:00 acid wash");
    }

    private static void Evening(BadLine line)
    {
        line.Carry("tal", "action", "classifier", "tighten the guard bolt");
        line.Carry("tal", "temporary-change", "mud-pump", "hose at the pump instead of the flushing line", "2026-11-22T19:00-05:00");
        line.At("2026-11-24T19:04-05:00").Round("hourly", "tal", "RG-L=40.0");
        line.At("2026-11-24T20:03-05:00").Round("hourly", "tal", "RG-L=44.0");
        line.Round("titration", "har", "WL-A=29.60", "WL-B=34.20", "WL-C=38.65");
        line.At("2026-11-24T20:20-05:00").Round("field", "har", SmallLine.At("2026-11-24T20:00-05:00"));
        line.Carry("tal", "isolation", "mud-pump", "seal change, 2 locks, card 118", null, ("permit", "4417"));
        line.Carry("tal", "bypass", "slaker", "low-flow lime trip bridged", "2026-11-25T14:00-05:00", ("allowed-by", "Larkin"), ("instead", "liquor flow by hand; under 240: procedure SL-4, call Larkin"), ("point", "SL-F1"), ("every", "30m"));
        foreach (var (hour, level) in new[] { (21, "48.0"), (22, "52.0"), (23, "56.0") })
        {
            line.At($"2026-11-24T{hour - 1}:48-05:00").Record("tal", "SL-F1=301");
            line.At($"2026-11-24T{hour}:04-05:00").Round("hourly", "tal", "RG-L=" + level);
            line.At($"2026-11-24T{hour}:20-05:00").Record("tal", "SL-F1=301");
        }

        line.At("2026-11-24T23:50-05:00").Record("tal", "SL-F1=300");
        line.At("2026-11-25T00:02-05:00").Round("hourly", "tal", "RG-L=60.0");
        line.Round("titration", "har", "WL-A=29.60", "WL-B=34.20", "WL-C=39.05");
        line.At("2026-11-25T00:21-05:00").Round("field", "har", SmallLine.At("2026-11-25T00:00-05:00"));
        line.Record("tal", "SL-F1=299");
        line.At("2026-11-25T00:50-05:00").Record("tal", "SL-F1=300");
        line.At("2026-11-25T01:15-05:00").Round("hourly", "tal", "RG-L=64.0");
        line.Remark("tal", "on hand control, level valve sticks, third time; over 80 %: call instrument duty", "wl-filter");
    }

    private static void Upset(BadLine line)
    {
        line.At("2026-11-25T02:10-05:00").Record("tal", "SL-T1=103.4", "SL-F1=250", "RG-L=66.0", "WT-L=62.0", "WW-L=58.0");
        line.Upset("tal", "2026-11-25T01:30-05:00", "slaker near boiling, lime cut");
        line.At("2026-11-25T03:05-05:00").Record("tal", "SL-T1=102.4", "SL-F1=301", "RG-L=68.0", "WT-L=62.0", "WW-L=58.0");
        line.At("2026-11-25T04:05-05:00").Record("tal", "SL-T1=102.0", "SL-F1=301", "RG-L=69.0", "WT-L=62.0", "WW-L=58.0");
        line.At("2026-11-25T04:10-05:00").Record("har", "SL-EYE=3", "SL-TRIP=3", "SL-HATCH=1", "ST-H2S1=0.2", "ST-H2S2=0.1");
        line.Carry("har", "safety-equipment", "eyewash-slaker", "eyewash runs weak", null, ("instead", "the one at the classifier stair"));
        line.At("2026-11-25T04:40-05:00").UpsetOver("tal", "slaker near boiling, lime cut; held at 16.4 t/h since");
        line.At("2026-11-25T04:52-05:00").Record("tal", "SL-F1=301");
    }

    private static void Morning(BadLine line)
    {
        line.At("2026-11-25T06:10-05:00").Round("hourly", "tal", "SL-T1=101.9", "RG-L=71.0");
        line.Round("morning", "tal", "ST-SC=-:no time", "LM-L=-:instrument faulty");
        line.Round("titration", "har", "WL-A=29.60", "WL-B=34.20", "WL-C=39.65");
        line.Record(new EntryRequest("tal", [SmallLine.Typed("SL-T1=101.8"), SmallLine.Typed("SL-F1=301"), SmallLine.Typed("LM-F1=16.40"), SmallLine.Typed("RG-L=70.5"), SmallLine.Typed("WT-L=62.0"), SmallLine.Typed("WW-L=58.0")])
        {
            Round = "hourly", WalkStart = SmallLine.At("2026-11-25T05:15-05:00"), WalkEnd = SmallLine.At("2026-11-25T05:15-05:00"),
        });
        line.At("2026-11-25T06:20-05:00").Carry("tal", "permit", "mud-tank", "tank cleaning", "2026-11-25T08:00-05:00", ("number", "4417"), ("inside", "1 by the attendant"));
        line.Confirm("tal", line.Desk.State.Carried.Find(i => i.ItemKind == "isolation")!.Id);
        line.Carry("tal", "delivery", "lime-silo", "lime, 24 t", "2026-11-25T09:30-05:00");
        line.Carry("tal", "wash", "wl-filter", "acid wash planned", "2026-11-25T10:00-05:00", ("acid", "yes"));
        line.Order("eng1", "Lime feed not above 16.4 t/h before the engineer says so.");
        line.At("2026-11-25T06:30-05:00").Record("tal", "SL-F1=301");
    }
}
