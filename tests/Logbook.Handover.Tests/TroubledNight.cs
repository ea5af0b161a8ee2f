namespace Logbook.Handover.Tests;

/// <summary>A night in November on the small line, with something of everything that a note must tell.</summary>
internal static class TroubledNight
{
    public static SmallLine Write()
    {
        var line = new SmallLine("2026-11-22T08:00-05:00");
        line.Carry("temporary-change", "mud-pump", "hose instead of the flushing line", SmallLine.At("2026-11-23T19:00-05:00"));
        line.Carry("action", "classifier", "tighten the guard bolt");
        for (var hour = 0; hour < 12; hour++)
        {
            line.Clock(SmallLine.At("2026-11-24T19:00-05:00").AddHours(hour).AddMinutes(4));
            Hour(line, hour);
        }

        return line.Clock("2026-11-25T06:40-05:00");
    }

    private static void Hour(SmallLine line, int hour)
    {
        var level = FormattableString.Invariant($"WT-L={48 + (2.5 * hour):F1}");
        switch (hour)
        {
            case 1:
                line.Record("hourly", "SL-T1=101.0", "SL-L1=16.5", level);
                line.Record("field", "SL-EYE=1", "ST-H2S=0.2");
                line.Carry("isolation", "mud-pump", "seal change, two locks, card 118", null, ("permit", "4417"));
                line.Carry("permit", "lime-mud-tank", "tank cleaning", SmallLine.At("2026-11-25T08:00-05:00"), ("number", "4417"), ("inside", "1 by the attendant"));
                break;
            case 4:
                line.Carry("bypass", "slaker", "low-flow lime trip bridged", SmallLine.At("2026-11-25T14:00-05:00"), ("instead", "liquor flow by hand each half hour"), ("allowed-by", "eng1"));
                line.State("wl-filter", "acid", "cloth wash");
                break;
            case 5 or 6:
                break; // nobody walked
            case 7:
                line.Record("hourly", "SL-T1=103.4", "SL-L1=-:instrument faulty", level);
                break;
            case 8:
                line.Correct(line.Record("hourly", "SL-T1=112.1", "SL-L1=16.4", level), "SL-T1=102.1", "digits swapped");
                break;
            case 9:
                line.Record("hourly", "SL-T1=101.9", "SL-L1=16.4", level);
                line.Record("field", "SL-EYE=2", "ST-H2S=0.3");
                line.Remark("bowl may climb when the lime goes back up", "slaker");
                break;
            case 10:
                line.Clock("2026-11-25T05:31-05:00");
                line.Record("hourly", "SL-T1=101.8", "SL-L1=16.4", level);
                break;
            default:
                line.Record("hourly", "SL-T1=101.0", "SL-L1=16.5", level);
                break;
        }
    }
}
