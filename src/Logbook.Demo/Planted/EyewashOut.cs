using Logbook.Checks;
using Logbook.Demo.Instruments;
using Logbook.Journal;

namespace Logbook.Demo.Planted;

/// <summary>The eyewash at the slaker gives no water and is taken out of service.</summary>
internal static class EyewashOut
{
    private const string Equipment = "eyewash-slaker";

    public static void Plant(Scene scene, Script script)
    {
        var since = scene.Until.AddHours(-5);
        var planted = new PlantedEvent(
            "eyewash-out", since, "SL-EYE", "now",
            "The eyewash and shower at the slaker is out: it stands in full under what can hurt, in the now view and in the note.", null);
        var item = new Carry(
            "safety-equipment", Equipment, "out of service, no flow when tested", null,
            scene.Staff.Supervisor, new Dictionary<string, string>(StringComparer.Ordinal) { ["instead"] = "eyewash and shower at the filters" });
        script.Events.Add(planted);
        script.Faults.Add(new InstrumentFault("SL-EYE", since, DateTimeOffset.MaxValue, FaultKind.Says, Out(scene)));
        script.Acts.Add(new Act(since, desk => Writing.AddCarried(desk, item, scene.Staff.Field(since))) { Plants = planted });
        script.Acts.Add(new Act(since.AddMinutes(1), desk =>
            Writing.ChangeState(desk, Equipment, "out", since, "work order raised", scene.Staff.Field(since))));
    }

    private static int Out(Scene scene) => scene.Point("SL-EYE").Choices.First(c => c.Text == "out").Digit;
}
