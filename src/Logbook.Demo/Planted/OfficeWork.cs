using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Demo.Planted;

/// <summary>A standing order, notes to other departments, a swap of shifts, answers to urgent findings, the same complaint again.</summary>
internal static class OfficeWork
{
    public static void Plant(Scene scene, Script script)
    {
        Order(scene, script, scene.Until.AddHours(-30));
        Departments(scene, script);
        Swap(scene, script);
        Again(scene, script);
        Answered(scene, script);
    }

    private static void Order(Scene scene, Script script, DateTimeOffset at)
    {
        if (!scene.Covers(at))
        {
            return;
        }

        var planted = new PlantedEvent("order-unread", at, null, "order", "A standing order on the lime feed: whoever has been on shift since has read it, the other crews have not; `order list` tells.", null);
        var order = new ItemId();
        script.Events.Add(planted);
        script.Acts.Add(new Act(at, desk => order.Keep(Writing.GiveOrder(desk, "Lime feed at most 22 t/h until the new weigher is calibrated", null, scene.Staff.Engineer))) { Plants = planted });
        var readers = Calendar.Shifts(scene.Site, at, scene.Until).Select(s => s.Start > at ? s.Start.AddMinutes(12) : at.AddMinutes(20)).Where(scene.Covers)
            .SelectMany(t => new[] { (By: scene.Staff.Panel(t), At: t), (By: scene.Staff.Field(t), At: t.AddMinutes(4)) })
            .Where(r => scene.Covers(r.At)).DistinctBy(r => r.By, StringComparer.Ordinal);
        script.Acts.AddRange(readers.Select(r => new Act(r.At, desk => Writing.SeeOrder(desk, order.Value, r.By))));
    }

    private static void Departments(Scene scene, Script script)
    {
        var (told, open) = (scene.Until.AddHours(-20), scene.Until.AddHours(-2));
        var note = new ItemId();
        script.Acts.Add(new Act(told, desk => note.Keep(Writing.TellDepartment(desk, "lime kiln", "Mud comes thinner for an hour, precoat renewed", scene.Staff.Panel(told)))));
        script.Acts.Add(new Act(told.AddMinutes(12), desk => Writing.Acknowledge(desk, note.Value, "kiln operator on shift", "noted", scene.Staff.Panel(told.AddMinutes(12)))));
        script.Acts.Add(new Act(open, desk => Writing.TellDepartment(
            desk, "recovery boiler", "Weak wash level falls while the filter is washed; call before it is changed over", scene.Staff.Panel(open))));
    }

    /// <summary>The crew's second operator of the running shift is off; one of another crew works instead and reads nothing else.</summary>
    private static void Swap(Scene scene, Script script)
    {
        var shift = Calendar.ShiftAt(scene.Site, scene.Until);
        var off = scene.Site.People.Where(p => p.Role == Role.Operator && string.Equals(p.Crew, shift.Crew, StringComparison.OrdinalIgnoreCase)).ToList();
        var other = scene.Site.People.FirstOrDefault(p => p.Role == Role.Operator && !string.Equals(p.Crew, shift.Crew, StringComparison.OrdinalIgnoreCase));
        var at = shift.Start.AddHours(-5);
        if (off.Count < 2 || other is null || !scene.Covers(at))
        {
            return;
        }

        script.Acts.Add(new Act(at, desk => Writing.ChangeRoster(
            desk, new RosterChange("swap", other.Code, off[1].Code, shift.Start, shift.End, "agreed between them"), scene.Staff.Supervisor)));
    }

    private static void Again(Scene scene, Script script)
    {
        DateTimeOffset[] times = [scene.Until.AddHours(-70), scene.Until.AddHours(-46), scene.Until.AddHours(-22)];
        if (!times.All(scene.Covers))
        {
            return;
        }

        script.Events.Add(new PlantedEvent("fault-again", times[2], null, "audit", "The level valve of the white liquor filter sticks for the third time in fourteen days: `audit` counts it.", null));
        foreach (var at in times)
        {
            var item = new ItemId();
            var by = scene.Staff.Field(at);
            script.Acts.Add(new Act(at, desk => item.Keep(Writing.AddCarried(
                desk, new Carry("action", "wl-filter", "level valve sticks, on hand control", null, by, new Dictionary<string, string>(StringComparer.Ordinal)), by))));
            script.Acts.Add(new Act(at.AddHours(5), desk => Writing.CloseCarried(desk, new CarryClosed(item.Value, "valve stroked and greased, back on automatic"), scene.Staff.Field(at.AddHours(5)))));
        }
    }

    /// <summary>The surge is answered when it is over; what became urgent otherwise, such as an eyewash that a look found out, still waits.</summary>
    private static void Answered(Scene scene, Script script)
    {
        var at = NearBoilOver.Over(scene).AddMinutes(6);
        for (var i = 0; i < 8; i++)
        {
            script.Acts.Add(new Act(at.AddMinutes(i), desk => desk.State.Unanswered.Find(f => f.Finding.Point is { } tag && (tag.StartsWith("SL-", StringComparison.Ordinal) || tag.StartsWith("LM-", StringComparison.Ordinal)) && f.At > NearBoilOver.At(scene)
                && desk.Site.FindPoint(tag) is { Choices.Count: 0 }) is { } open
                ? Writing.Answer(desk, FormattableString.Invariant($"{open.Seq}.{open.Number}"), "lime hung in the silo and came at once; feed cut, everyone clear, supervisor told", scene.Staff.Panel(at))
                : null));
        }
    }
}
