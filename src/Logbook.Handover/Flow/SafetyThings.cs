using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What the site has of safety equipment, by name: what a question about one that is out may be mistaken for.</summary>
internal static class SafetyThings
{
    // What such things are called. Common practice, no source.
    private static readonly string[] Called = ["eyewash", "shower", "guard", "monitor", "detector", "alarm", "hatch", "ventilation", "lighting", "extinguisher"];

    /// <summary>Those of which nothing says that they are out, or were seen bad.</summary>
    public static IEnumerable<string> Others(Site site, State state)
    {
        var open = state.Carried.Where(i => i.ItemKind is "safety-equipment" or "bypass").ToList();
        var points = site.Points.Where(p => p.Always && ((p.Choices.Count > 0 && IsOne(p.Description)) || p.Unit.Name == "ppm"));
        bool IsOut(Point p) => open.Exists(i => Hazards.IsOf(site, i, p)) || state.Findings.GetValueOrDefault(p.Tag, []).Exists(f => f.Finding.Level >= Level.Watch);
        return site.Equipment.Where(e => IsOne(e.Name) && !open.Exists(i => Handed.Same(i.On, e.Code))).Select(e => Say.Equipment(site, e.Code))
            .Concat(points.Where(p => !IsOut(p)).Select(p => p.Unit.Name == "ppm" ? $"Gas monitor: {Say.Visible(p.Description)}" : Say.Visible(p.Description)))
            .Distinct(StringComparer.OrdinalIgnoreCase).Except(points.Where(IsOut).Select(p => Say.Visible(p.Description)), StringComparer.OrdinalIgnoreCase);
    }

    private static bool IsOne(string name) => Called.Any(word => name.Contains(word, StringComparison.OrdinalIgnoreCase));
}
