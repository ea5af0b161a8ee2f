using Logbook.Demo.Line;

namespace Logbook.Demo.Planted;

/// <summary>
/// Everything that is planted, set by its distance from the end of the history, so that the shift now running and the one
/// before show it at whatever hour the demo is made.
/// </summary>
internal static class Plot
{
    public static Script Of(Scene scene, IReadOnlyList<SlotTimes> plan, Chance chance)
    {
        var script = new Script();
        FirstResults.Plant(scene, script);
        FirstFit.Plant(scene, script);
        LeftForTheNewcomer.Plant(scene, script, plan);
        OverdueHose.Plant(scene, script);
        StuckTransmitter.Plant(scene, script);
        DriftingTransmitter.Plant(scene, script);
        EyewashOut.Plant(scene, script);
        NearBoilOver.Plant(scene, script);
        AcidWash.Plant(scene, script);
        MissedRound.Plant(scene, script, plan);
        TitrationError.Plant(scene, script, plan);
        OpenWork.Plant(scene, script);
        BadNight.Plant(scene, script, plan);
        OfficeWork.Plant(scene, script);
        Everyday.Plant(scene, script, chance);
        Handovers.Plant(scene, script, chance);
        return script;
    }
}
