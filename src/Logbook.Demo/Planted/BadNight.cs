using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Demo.Planted;

/// <summary>An upset in which the rounds were not walked, and a walk of another night that was typed from the sheet before it.</summary>
internal static class BadNight
{
    /// <summary>A copied walk stands out only against enough others.</summary>
    private static readonly TimeSpan _learned = TimeSpan.FromHours(64);

    public static void Plant(Scene scene, Script script, IReadOnlyList<SlotTimes> plan)
    {
        Upset(scene, script, plan, scene.Until.AddHours(-26));
        Copied(scene, script, plan);
    }

    private static void Upset(Scene scene, Script script, IReadOnlyList<SlotTimes> plan, DateTimeOffset from)
    {
        if (!scene.Covers(from))
        {
            return;
        }

        var to = from.AddHours(2);
        script.Events.Add(new PlantedEvent("upset", from, null, "audit", "Two hours of upset after the lime screw tripped: the rounds are one line in `audit` and in that shift's note, not a miss each.", null));
        foreach (var times in plan.Where(t => t.Round.Id == "hourly" && t.Slot.DueAt >= from && t.Slot.DueAt < to))
        {
            script.LeftUndone.Add((times.Round.Id, times.Slot.DueAt));
        }

        script.Acts.Add(new Act(from.AddMinutes(9), desk => Writing.BeginUpset(desk, from, "lime screw tripped, slaker without lime", scene.Staff.Panel(from.AddMinutes(9)))));
        script.Acts.Add(new Act(to.AddMinutes(5), desk => Writing.EndUpset(desk, to, null, scene.Staff.Panel(to.AddMinutes(5)))));
    }

    private static void Copied(Scene scene, Script script, IReadOnlyList<SlotTimes> plan)
    {
        var slots = plan.Where(t => t.Round.Id == "hourly" && t.Saved < scene.Until.AddHours(-17) && t.Saved > scene.Start + _learned
            && !script.LeftUndone.Contains((t.Round.Id, t.Slot.DueAt))).ToList();
        if (slots.LastOrDefault() is not { } slot)
        {
            return;
        }

        var planted = new PlantedEvent(
            "copied-walk", slot.Slot.DueAt, null, "audit", "One line round has the figures of the sheet before it: `audit` shows it as something to look at, with what else explains it.", null);
        script.Events.Add(planted);
        script.Planted[(slot.Round.Id, slot.Slot.DueAt)] = planted;
        script.Copied.Add((slot.Round.Id, slot.Slot.DueAt));
    }
}
