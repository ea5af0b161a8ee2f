using Logbook.Demo.Line;

namespace Logbook.Demo.Planted;

/// <summary>Lime comes in a surge, the slaker comes within a kelvin of boiling, the lime is cut and it calms down.</summary>
internal static class NearBoilOver
{
    private static readonly TimeSpan _surge = TimeSpan.FromMinutes(25);
    private static readonly TimeSpan _cut = TimeSpan.FromMinutes(40);

    /// <summary>When the lime surges.</summary>
    public static DateTimeOffset At(Scene scene) => scene.Until.AddHours(-3.5);

    /// <summary>When the slaker is calm again.</summary>
    public static DateTimeOffset Over(Scene scene) => At(scene) + _surge + _cut + TimeSpan.FromMinutes(30);

    public static void Plant(Scene scene, Script script)
    {
        var at = At(scene);
        var planted = new PlantedEvent(
            "near-boil-over", at.AddMinutes(21), "SL-MARGIN", "finding",
            "A surge of lime took the slaker within 1 K of boiling: an urgent finding, then the cut of the lime and the recovery.", null);
        script.Events.Add(planted);
        script.Changes.Add(new PlantChange(Lever.LimeFactor, at, at + _surge, 0.55));
        script.Changes.Add(new PlantChange(Lever.LimeFactor, at + _surge, at + _surge + _cut, -0.35));
        script.Rereadings.Add(new Rereading(
            at.AddMinutes(21), ["SL-T1", "GC-T2", "SL-F1", "LM-F1", "LM-N1"],
            "Slaker climbing, lime came in a surge after it hung in the silo. Everyone kept clear, site procedure started") { Plants = planted });
        script.Rereadings.Add(new Rereading(
            at.AddMinutes(36), ["SL-T1", "SL-F1", "LM-F1", "LM-N1"], "Lime cut back from the panel, slaker coming down"));
        script.Rereadings.Add(new Rereading(
            Over(scene), ["SL-T1", "GC-T2", "SL-F1", "LM-F1", "LM-N1"], "Lime back at the dose, slaker steady"));
    }
}
