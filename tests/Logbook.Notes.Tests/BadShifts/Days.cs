using Logbook.Checks;
using Logbook.Handover;
using Logbook.Handover.Tests;

namespace Logbook.Notes.Tests.BadShifts;

/// <summary>More bad shifts. People and numbers are invented.</summary>
internal static class Days
{
    /// <summary>A splash of white liquor, both eyewashes bad, a leak that still runs.</summary>
    public static BadLine SplashAndNoEyewash()
    {
        var line = new BadLine("2026-11-24T19:00-05:00").HeldBy("tal");
        line.At("2026-11-24T20:21-05:00").Round("field", "har", SmallLine.At("2026-11-24T20:00-05:00"), "SL-EYE=4");
        line.Carry("har", "safety-equipment", "eyewash-slaker", "eyewash and shower shut for the weld", "2026-11-26T15:00-05:00", ("instead", "the pair at the filters"));
        line.At("2026-11-24T23:50-05:00").Record("har", "WF-EYE=4", "WF-LEAK=4");
        line.Remark("har", "Harbour splashed on the forearm at a flange 23:40; rinsed with water 30 min, seen by first aid 00:15", "wl-filter");
        line.Carry("har", "action", "wl-filter", "leak at the shell flange, area barriered, filter drained down");
        line.State("har", "wl-filter", "draining", "leak at the shell flange");
        line.At("2026-11-25T06:31-05:00").Prepare("tal", ["if the leak spreads to the walkway: stop the feed, spill procedure WF-2"], ["Harbour hurt, first aid has seen it", "no caustic work at the filters"], "out=not-checked", "injury=change:Harbour hurt", "release=change:leak at the filters");
        return line.At("2026-11-25T06:45-05:00");
    }

    /// <summary>Weak wash runs out; the recovery boiler was told and has not answered.</summary>
    public static BadLine WeakWashLost()
    {
        var line = new BadLine("2026-11-24T19:00-05:00").HeldBy("tal");
        foreach (var (hour, level) in new[] { ("2026-11-25T02:03", "41.0"), ("2026-11-25T03:02", "33.0"), ("2026-11-25T04:04", "25.0"), ("2026-11-25T05:03", "17.5"), ("2026-11-25T06:02", "10.5") })
        {
            line.At(hour + "-05:00").Round("hourly", "tal", "WW-L=" + level);
        }

        line.Record("tal", "DT-D=1163");
        line.Tell("tal", "recovery boiler", "weak wash falls 8 % an hour, under 12 % at 06:00; dissolving tank density 1163");
        line.State("tal", "mud-filter", "stopped", "no wash water");
        return line.At("2026-11-25T06:20-05:00");
    }

    /// <summary>Bought lime that runs hot, wet lime at the bin, a guard off and a rake that pulls hard.</summary>
    public static BadLine HotLimeAndGuardOff()
    {
        var line = new BadLine("2026-11-25T07:00-05:00").HeldBy("qui");
        line.At("2026-11-25T09:40-05:00").Record("qui", "LM-SRC=2", "LM-DUST=4", "LM-GUARD=3", "LM-T=210", "CL-I=21.0", "CL-GUARD=3");
        line.Carry("qui", "out-of-service", "classifier", "rake stopped by hand at 21 A; not jogged", null, ("told", "Larkin"));
        line.Carry("qui", "isolation", "classifier", "rake and screw, 1 lock, card 80");
        line.At("2026-11-25T12:04-05:00").Round("hourly", "qui", "SL-T1=102.9", "LM-F1=22.50");
        line.At("2026-11-25T15:03-05:00").Round("hourly", "qui", "SL-T1=102.3", "LM-F1=16.00");
        line.Correct("qui", "LM-T=201", "read the scale wrong");
        return line.At("2026-11-25T18:30-05:00");
    }

    /// <summary>The night in which the clock is put back: thirteen hours, an upset, walks typed later, a machine's clock that jumped.</summary>
    public static BadLine TheLongNight()
    {
        var line = new BadLine("2026-10-31T18:50-04:00").HeldBy("tal");
        line.At("2026-10-31T20:02-04:00").Round("hourly", "tal");
        line.At("2026-11-01T00:40-04:00").Upset("tal", "2026-11-01T00:30-04:00", "liquor pumps hunting after the power dip");
        line.At("2026-11-01T01:30-04:00").Remark("tal", "first half past one: pumps on hand");
        line.At("2026-11-01T01:30-05:00").Remark("tal", "second half past one: pumps on auto again");
        line.UpsetOver("tal", "liquor pumps hunting after the power dip");
        line.At("2026-11-01T05:50-05:00").Round("field", "har", SmallLine.At("2026-11-01T04:05-05:00"), "SL-TRIP=3");
        line.Round("hourly", "tal", "RG-L=-:no time", "WT-L=-:no time");
        return line.At("2026-11-01T06:35-05:00");
    }

    /// <summary>A shutdown with more open than anybody remembers.</summary>
    public static BadLine Shutdown()
    {
        var line = new BadLine("2026-11-24T07:00-05:00").HeldBy("qui");
        string[] equipment = ["raw-gl-tank", "gl-pump", "gl-filter", "gl-tank", "gl-cooler", "dregs-centrifuge", "slaker", "classifier", "causticizer-1", "causticizer-2", "causticizer-3", "wl-filter"];
        for (var i = 0; i < equipment.Length; i++)
        {
            line.Carry("qui", "isolation", equipment[i], $"shutdown step {i + 1}, card {200 + i}", null, ("permit", $"{6000 + i}"));
            if (i % 2 == 0)
            {
                line.Carry("qui", "permit", equipment[i], "inspection inside", "2026-11-25T16:00-05:00", i % 4 == 0 ? [("number", $"{6000 + i}"), ("inside", $"{1 + (i / 4)}")] : [("number", $"{6000 + i}")]);
            }

            line.State("qui", equipment[i], i == 11 ? "acid" : "out", "shutdown");
        }

        line.Carry("qui", "bypass", "lime-screw", "pull cord bridged for the run-out", "2026-11-25T18:00-05:00", ("allowed-by", "Larkin"), ("instead", "one person at the cord"));
        line.Carry("qui", "safety-equipment", "eyewash-filters", "water shut off", null, ("instead", "the hose unit at the stair"));
        line.Upset("qui", null, "shutdown");
        return line.At("2026-11-24T18:30-05:00");
    }
}
