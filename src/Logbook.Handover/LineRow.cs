using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The line in one row: one mark a system, in the liquor's order.</summary>
internal static class LineRow
{
    public static IReadOnlyList<(string Area, char Mark)> Of(Site site, State state, DateTimeOffset now) =>
        [.. Area.All.Where(area => area != "site").Select(area => (area, Mark(site, state, now, area)))];

    private static char Mark(Site site, State state, DateTimeOffset now, string area)
    {
        var points = site.Points.Where(p => p.Area == area).ToList();
        var levels = points.SelectMany(p => state.Findings.GetValueOrDefault(p.Tag) ?? []).Select(f => f.Finding.Level).ToList();
        var equipment = site.Equipment.Where(e => e.Area == area).ToList();
        return levels.Contains(Level.Urgent) ? '!'
            : levels.Contains(Level.Watch) ? '?'
            : equipment.Count > 0 && equipment.TrueForAll(e => !EquipmentHistory.Runs(state.StateOf(e.Code))) ? 'x'
            : points.Exists(p => IsFresh(p, state, now)) ? '.'
            : '-';
    }

    private static bool IsFresh(Point point, State state, DateTimeOffset now) =>
        point.Kind == PointKind.Read && state.Latest.TryGetValue(point.Tag, out var latest) && latest.Value is not null && now - latest.At <= point.Stale;
}
