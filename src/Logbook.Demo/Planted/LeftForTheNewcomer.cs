using Logbook.Plant;

namespace Logbook.Demo.Planted;

/// <summary>Rounds of the running shift that are left undone, so that whoever opens the demo has something to do.</summary>
internal static class LeftForTheNewcomer
{
    public static void Plant(Scene scene, Script script, IReadOnlyList<SlotTimes> plan)
    {
        var open = plan.Where(t => t.Slot.Opens <= scene.Until && scene.Until < t.Slot.Closes).ToList();
        if (!open.Exists(t => t.Round.Schedule is not Schedule.Per) && LastOfShift(scene, plan) is { } last)
        {
            open.Add(last);
        }

        foreach (var times in open)
        {
            script.LeftUndone.Add((times.Round.Id, times.Slot.DueAt));
        }
    }

    private static SlotTimes? LastOfShift(Scene scene, IReadOnlyList<SlotTimes> plan) =>
        plan.Where(t => t.Round.Id == "hourly" && t.Slot.DueAt >= Calendar.ShiftAt(scene.Site, scene.Until).Start).MaxBy(t => t.Slot.DueAt);
}
