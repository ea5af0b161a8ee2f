using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Demo.Planted;

/// <summary>A temporary hose that should have been gone three days ago.</summary>
internal static class OverdueHose
{
    public static void Plant(Scene scene, Script script)
    {
        var since = scene.Until.AddDays(-9);
        since = since > scene.Start ? since : scene.Start.AddMinutes(20);
        var due = scene.Until.AddDays(-3);
        due = due > since ? due : since.AddHours(12); // of a short history
        var planted = new PlantedEvent(
            "overdue-hose", due, null, "note",
            "A temporary hose feeds the seal water of the mud pump. It was to be out by now; the note and `carry list` show it as past its date.", null);
        var item = new Carry(
            "temporary-change", "mud-pump", "temporary hose for the seal water, until the pipe is renewed",
            due, scene.Staff.Engineer, new Dictionary<string, string>(StringComparer.Ordinal));
        script.Events.Add(planted);
        script.Acts.Add(new Act(since, desk => Writing.AddCarried(desk, item, scene.Staff.Field(since))) { Plants = planted });
    }
}
