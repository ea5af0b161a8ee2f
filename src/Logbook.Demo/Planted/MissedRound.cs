namespace Logbook.Demo.Planted;

/// <summary>One round that nobody did.</summary>
internal static class MissedRound
{
    public static void Plant(Scene scene, Script script, IReadOnlyList<SlotTimes> plan)
    {
        var wanted = scene.Until.AddHours(-6);
        var slot = plan
            .Where(t => t.Round.Id == "hourly" && t.Slot.Closes < NearBoilOver.At(scene) && !script.LeftUndone.Contains((t.Round.Id, t.Slot.DueAt)))
            .MinBy(t => (t.Slot.DueAt - wanted).Duration())
            ?? throw new InvalidOperationException("the demo's history has no line round to miss");
        script.LeftUndone.Add((slot.Round.Id, slot.Slot.DueAt));
        script.Events.Add(new PlantedEvent(
            "missed-round", slot.Slot.DueAt, null, "audit",
            $"Nobody did the line round of {slot.Slot.DueAt:HH:mm}: `audit` lists it as missed, and the note of that shift under what was not done.", null));
    }
}
