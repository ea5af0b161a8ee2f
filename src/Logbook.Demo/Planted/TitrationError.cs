using System.Globalization;
using Logbook.Checks;
using Logbook.Demo.Instruments;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Demo.Planted;

/// <summary>
/// Two misread titrations of white liquor: the last one, still standing, and one of the day before, whose digits were
/// swapped and which was put right.
/// </summary>
internal static class TitrationError
{
    private const string Tag = "WL-B";

    /// <summary>mL: the burette's figures count downwards, and the wrong one was taken.</summary>
    private const double Misread = 1.5;

    private const double Swapped = -4.5;

    public static void Plant(Scene scene, Script script, IReadOnlyList<SlotTimes> plan)
    {
        var done = plan.Where(t => t.Round.Id == "white-liquor" && !script.LeftUndone.Contains((t.Round.Id, t.Slot.DueAt))).ToList();
        PlantStanding(script, done[^1]);
        var before = done.Where(t => t.ReadTo < scene.Until.AddHours(-20)).MaxBy(t => t.ReadTo);
        if (before is not null)
        {
            PlantCorrected(scene, script, before);
        }
    }

    private static void PlantStanding(Script script, SlotTimes times)
    {
        var planted = new PlantedEvent(
            "titration-error", times.ReadTo, Tag, "finding",
            "End point B of the last white liquor titration was read 1.5 mL too high: the causticity it gives is above its limit.", null);
        Misreads(script, times, Misread, planted);
    }

    private static void PlantCorrected(Scene scene, Script script, SlotTimes times)
    {
        var planted = new PlantedEvent(
            "titration-corrected", times.ReadTo, Tag, "audit",
            "Two digits of end point B were swapped and put right a quarter of an hour later: both values stay, and `audit` lists the correction.", null);
        Misreads(script, times, Swapped, planted);
        script.Acts.Add(new Act(times.Saved.AddMinutes(14), desk => Correct(desk, scene, times)));
    }

    private static void Misreads(Script script, SlotTimes times, double by, PlantedEvent planted)
    {
        script.Faults.Add(new InstrumentFault(Tag, times.ReadFrom, times.ReadTo.AddTicks(1), FaultKind.Offset, by));
        script.Planted[(times.Round.Id, times.Slot.DueAt)] = planted;
        script.Events.Add(planted);
    }

    private static Written Correct(Desk desk, Scene scene, SlotTimes times)
    {
        var entry = desk.Store.Read().Last(r => r.Body is Entry { Round: "white-liquor" });
        var wrong = ((Entry)entry.Body).Readings.First(r => r.Point == Tag).Value ?? throw new InvalidOperationException("the titration was not taken");
        var right = (wrong - Swapped).ToString("F2", CultureInfo.InvariantCulture);
        return Writing.Correct(
            desk, entry.Seq, new TypedReading(Tag, right, Place.Unknown), "two digits swapped when typed", scene.Staff.Field(times.Saved));
    }
}
