using Logbook.Checks;
using Logbook.Demo.Instruments;
using Logbook.Demo.Line;
using Logbook.Journal;

namespace Logbook.Demo.Planted;

/// <summary>The green liquor filter is washed with acid about once a week; the last wash is still going on.</summary>
internal static class AcidWash
{
    private const string Equipment = "gl-filter";

    private static readonly TimeSpan _takes = TimeSpan.FromHours(2.5);
    private static readonly TimeSpan _every = TimeSpan.FromHours(160);

    public static void Plant(Scene scene, Script script)
    {
        var last = scene.Until.AddMinutes(-100);
        var planted = new PlantedEvent(
            "acid-wash", last, null, "now",
            "The green liquor filter is in acid: what can hurt names it, and the note prints the caution about acid and sulphide.", null);
        script.Events.Add(planted);
        Begin(scene, script, last, planted);
        // One wash lies before the history, so that the hours since a wash have a beginning.
        for (var wash = last - _every; wash > scene.Start - (_every * 2); wash -= _every)
        {
            if (scene.Covers(wash))
            {
                End(scene, script, wash + _takes, Begin(scene, script, wash, null));
            }
            else
            {
                script.Changes.Add(new PlantChange(Lever.FilterRunning, wash, wash + _takes, -1));
            }
        }
    }

    private static ItemId Begin(Scene scene, Script script, DateTimeOffset at, PlantedEvent? planted)
    {
        var by = scene.Staff.Field(at);
        var id = new ItemId();
        var item = new Carry(
            "wash", Equipment, "Acid wash: valves tagged, area barriered, drain to the acid sump alone", at + _takes, by,
            new Dictionary<string, string>(StringComparer.Ordinal) { ["acid"] = "sulphamic" });
        script.Changes.Add(new PlantChange(Lever.FilterRunning, at, at + _takes, -1));
        script.Faults.Add(new InstrumentFault("ST-ACID", at, at + _takes, FaultKind.Says, 2));
        script.Acts.Add(new Act(at, desk => id.Keep(Writing.AddCarried(desk, item, by))));
        script.Acts.Add(new Act(at.AddMinutes(2), desk =>
            Writing.ChangeState(desk, Equipment, "acid", at, "wash for scale, flow was falling", by)) { Plants = planted });
        return id;
    }

    private static void End(Scene scene, Script script, DateTimeOffset at, ItemId id)
    {
        var by = scene.Staff.Field(at);
        script.Acts.Add(new Act(at, desk => Writing.ChangeState(desk, Equipment, "running", at, "rinsed and back in service", by)));
        script.Acts.Add(new Act(at.AddMinutes(3), desk =>
            Writing.CloseCarried(desk, new CarryClosed(id.Value, "acid drained and rinsed out, gas tested, tags off"), by)));
    }
}

/// <summary>The id of a carried item, known once it has been saved.</summary>
internal sealed class ItemId
{
    public long Value { get; private set; }

    public Written Keep(Written written)
    {
        Value = written.Record?.Seq ?? 0;
        return written;
    }
}
