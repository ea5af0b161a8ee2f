namespace Logbook.Demo.Planted;

/// <summary>The journal begins in the middle of a shift: the panel is read through once, and the laboratory's last results are carried over from paper.</summary>
internal static class FirstResults
{
    public static void Plant(Scene scene, Script script)
    {
        var tags = scene.Site.Rounds.Where(r => !r.Field).SelectMany(r => r.Points).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        script.Rereadings.Add(new Rereading(scene.Start.AddMinutes(3), tags, "First entry: panel as it stands, and the laboratory's last results from the paper sheet"));
    }
}
