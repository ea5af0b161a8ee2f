using Logbook.Checks;
using Logbook.Demo.Line;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Demo.Planted;

/// <summary>What happens on any line: remarks, the mud filter's precoat, small things carried on, a delivery that is coming.</summary>
internal static class Everyday
{
    public static void Plant(Scene scene, Script script, Chance chance)
    {
        Remarks(scene, script, chance);
        Precoat(scene, script);
        Carried(scene, script);
    }

    private static void Remarks(Scene scene, Script script, Chance chance)
    {
        var words = new RemarkWords(scene.Site, chance);
        foreach (var shift in Calendar.Shifts(scene.Site, scene.Start, scene.Until))
        {
            for (var n = 0; n < 2; n++)
            {
                var at = shift.Start.AddHours(chance.Between(0.5, 11.5));
                var (text, on) = words.Next();
                if (scene.Covers(at) && at < shift.End)
                {
                    script.Acts.Add(new Act(at, desk => Writing.Remark(desk, text, on, null, n == 0 ? scene.Staff.Panel(at) : scene.Staff.Field(at))));
                }
            }
        }
    }

    /// <summary>Twice a day the mud filter's precoat is renewed; the readings' hours since then start again.</summary>
    private static void Precoat(Scene scene, Script script)
    {
        foreach (var at in Instruments.HoursReadings.PrecoatRenewals(scene.Start, scene.Until).Where(scene.Covers))
        {
            var by = scene.Staff.Field(at);
            script.Acts.Add(new Act(at, desk => Writing.ChangeState(desk, "mud-filter", "washing", at, "precoat renewed", by)));
            var back = at.AddMinutes(25);
            if (back <= scene.Until)
            {
                script.Acts.Add(new Act(back, desk => Writing.ChangeState(desk, "mud-filter", "running", back, null, by)));
            }
        }
    }

    private static void Carried(Scene scene, Script script)
    {
        Add(scene, script, scene.Until.AddHours(-40), new Carry(
            "action", "classifier", "bolt missing in the rake guard; guard tied, work order raised", null, scene.Staff.Supervisor, None));
        Add(scene, script, scene.Until.AddHours(-9), new Carry(
            "delivery", "lime-silo", "bought lime, 24 t; may run hotter than kiln lime", scene.Until.AddHours(4), scene.Staff.Supervisor, None));
    }

    private static readonly Dictionary<string, string> None = new(StringComparer.Ordinal);

    private static void Add(Scene scene, Script script, DateTimeOffset at, Carry item)
    {
        if (scene.Covers(at))
        {
            script.Acts.Add(new Act(at, desk => Writing.AddCarried(desk, item, scene.Staff.Panel(at))));
        }
    }
}
