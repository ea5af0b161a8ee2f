using Logbook.Checks;
using Logbook.Demo.Instruments;
using Logbook.Demo.Line;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>The honest work: every round of the site, done by the people on shift and typed like anyone else would.</summary>
internal sealed class Rounds(Scene scene, Script script, Reader reader, Chance chance)
{
    /// <summary>One act for each slot that somebody does.</summary>
    public static IEnumerable<SlotTimes> Plan(Scene scene, Chance chance) =>
        from round in scene.Site.Rounds
        from slot in Calendar.Slots(scene.Site, round, scene.Start, scene.Until.AddDays(8))
        let times = SlotTimes.Of(scene.Site, round, slot, chance)
        where times.ReadFrom >= scene.Start && times.Saved <= scene.Until
        select times;

    public Act Do(SlotTimes times) => new(times.Saved, desk => Save(desk, times))
    {
        Plants = script.Planted.GetValueOrDefault((times.Round.Id, times.Slot.DueAt)),
    };

    private Written? Save(Desk desk, SlotTimes times)
    {
        if (script.Copied.Contains((times.Round.Id, times.Slot.DueAt)))
        {
            return RecordEntry.Run(desk, Request(times, SheetBefore(desk, times)));
        }

        var skipped = Skipped(times);
        var readings = times.Slot.Points
            .Select(scene.Point)
            .Select(point => point.Tag == skipped?.Tag ? skipped.Value.Reading : Typed(desk, point, times))
            .OfType<TypedReading>()
            .ToList();
        return readings.Count == 0 ? null : RecordEntry.Run(desk, Request(times, readings));
    }

    private static IReadOnlyList<TypedReading> SheetBefore(Desk desk, SlotTimes times) =>
        [.. ((Entry)desk.Store.Between(times.Saved.AddHours(-12), times.Saved).Last(r => r.Body is Entry { Round: { } round } && round == times.Round.Id).Body).Readings
            .Where(r => r.Typed is not null).Select(r => new TypedReading(r.Point, r.Typed!, Place.Unknown))];

    /// <summary>The reading; that it could not be taken; or nothing, when its equipment stood still before the round was due.</summary>
    private TypedReading? Typed(Desk desk, Point point, SlotTimes times)
    {
        if (point.Always || desk.State.StateOf(point.Equipment) is "running")
        {
            return new TypedReading(point.Tag, reader.Read(point, times.ReadTo), Place.Unknown);
        }

        return desk.State.Equipment[point.Equipment!].Since <= times.Slot.DueAt && times.Slot.DueAt <= times.Saved
            ? null
            : new TypedReading(point.Tag, "-", Place.Unknown) { Why = "equipment down" };
    }

    private EntryRequest Request(SlotTimes times, IReadOnlyList<TypedReading> readings)
    {
        var by = times.Round.Field || SlotTimes.IsLaboratory(scene.Site, times.Round)
            ? scene.Staff.Field(times.Saved)
            : scene.Staff.Panel(times.Saved);
        return new EntryRequest(by, readings)
        {
            Round = times.Round.Id,
            At = times.ReadTo,
            WalkStart = times.Round.Field ? times.ReadFrom : null,
            WalkEnd = times.Round.Field ? times.ReadTo : null,
        };
    }

    /// <summary>In one panel round or walk of thirty one reading could not be taken; the reason is said. Samples are taken whole.</summary>
    private (string Tag, TypedReading Reading)? Skipped(SlotTimes times)
    {
        var possible = times.Slot.Points.Select(scene.Point).Where(p => p.Sample is null && !p.Always).ToList();
        if (possible.Count == 0 || SlotTimes.IsLaboratory(scene.Site, times.Round) || !chance.OneIn(30))
        {
            return null;
        }

        var point = chance.Pick(possible);
        var usual = scene.Site.Reasons.NotTaken.Where(r => r is "no time" or "forgot" or "instrument faulty" or "sample point blocked").ToList();
        var why = chance.Pick(usual.Count > 0 ? usual : scene.Site.Reasons.NotTaken);
        return (point.Tag, new TypedReading(point.Tag, "-", Place.Unknown) { Why = why });
    }
}
