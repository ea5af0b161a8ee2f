using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Demo.Planted;

/// <summary>Work that is open over the shift change: a defeated trip with what is read instead, a lock-out, a person in a tank.</summary>
internal static class OpenWork
{
    public static void Plant(Scene scene, Script script)
    {
        DefeatedTrip(scene, script, scene.Until.AddHours(-6.5));
        Entry(scene, script, scene.Until.AddHours(-3));
    }

    private static void DefeatedTrip(Scene scene, Script script, DateTimeOffset at)
    {
        var planted = new PlantedEvent(
            "trip-defeated", at, "SL-F1", "due", "The low-flow trip of the lime feed is bridged: what can hurt names it, and `due` asks for the liquor flow by hand each hour instead.", null);
        script.Events.Add(planted);
        var item = new Carry(
            "bypass", "lime-screw", "low-flow trip of the lime feed bridged, transmitter being changed", scene.Until.AddHours(4), scene.Staff.Supervisor,
            new Dictionary<string, string>(StringComparer.Ordinal) { ["instead"] = "liquor flow read each hour, lime off by hand under 200 m3/h", ["point"] = "SL-F1", ["every"] = "1h", ["allowed-by"] = scene.Staff.Engineer });
        script.Acts.Add(new Act(at, desk => Writing.AddCarried(desk, item, scene.Staff.Supervisor)) { Plants = planted });
    }

    private static void Entry(Scene scene, Script script, DateTimeOffset at)
    {
        var by = scene.Staff.Field(at);
        var planted = new PlantedEvent(
            "person-inside", at.AddMinutes(10), null, "now", "A permit with people inside the mud tank, and the mud pump locked out under it: both stand in full under what can hurt.", null);
        script.Events.Add(planted);
        var locked = new ItemId();
        var permit = new ItemId();
        script.Acts.Add(new Act(at, desk => locked.Keep(Writing.AddCarried(
            desk, new Carry("isolation", "mud-pump", "locked for entry into the mud tank, card 118", null, by, Fields(("permit", "4417"))), by))));
        script.Acts.Add(new Act(at.AddMinutes(3), desk => Writing.ConfirmCarried(desk, new CarryConfirmed(locked.Value, true, null, Fields(), "on"), by)));
        script.Acts.Add(new Act(at.AddMinutes(10), desk => permit.Keep(Writing.AddCarried(
            desk, new Carry("permit", "mud-tank", "inspection of the rake", scene.Until.AddHours(2), by, Fields(("number", "4417"), ("inside", "2"))), by))) { Plants = planted });
        script.Acts.Add(new Act(scene.Until.AddMinutes(-35), desk => Writing.ConfirmCarried(
            desk, new CarryConfirmed(permit.Value, true, null, Fields(("inside", "1"), ("step", "rake inspected, hatch still open")), null), by)));
    }

    private static Dictionary<string, string> Fields(params (string Name, string Value)[] fields) => fields.ToDictionary(f => f.Name, f => f.Value, StringComparer.Ordinal);
}
