using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The line in one row: one mark a system, in the liquor's order.</summary>
internal static class LineRow
{
    public static IReadOnlyList<(string Area, char Mark)> Of(Site site, State state, DateTimeOffset now) =>
        [.. Area.All.Where(area => area != "site").Select(area => (area, Mark(site, state, now, area)))];

    /// <summary>What can hurt by a record: people inside, a lock, a bypass, acid, what is out. Where nothing is urgent it stands before all else.</summary>
    private static bool CanHurt(Site site, State state, string area) =>
        state.Carried.Where(i => i.IsHazard).Select(i => i.On).Concat(state.Equipment.Values.Where(e => e.State == "acid").Select(e => e.Equipment))
            .Any(on => area.Equals(site.FindEquipment(on)?.Area ?? on, StringComparison.OrdinalIgnoreCase));

    private static char Mark(Site site, State state, DateTimeOffset now, string area)
    {
        var points = site.Points.Where(p => p.Area == area).ToList();
        var levels = points.SelectMany(p => state.Findings.GetValueOrDefault(p.Tag) ?? []).Select(f => f.Finding.Level).ToList();
        var equipment = site.Equipment.Where(e => e.Area == area).ToList();
        return levels.Contains(Level.Urgent) ? '!'
            : CanHurt(site, state, area) ? '*'
            : levels.Contains(Level.Watch) ? '?'
            : equipment.Count > 0 && equipment.TrueForAll(e => !EquipmentHistory.Runs(state.StateOf(e.Code))) ? 'x'
            : points.Exists(p => IsFresh(p, state, now)) ? '.'
            : '-';
    }

    private static bool IsFresh(Point point, State state, DateTimeOffset now) =>
        point.Kind == PointKind.Read && state.Latest.TryGetValue(point.Tag, out var latest) && latest.Value is not null && now - latest.At <= point.Stale;
}

/// <summary>What each mark of the row says, the one that counts first: where two are true of a system the earlier one stands.</summary>
public static class LineMarks
{
    public static readonly IReadOnlyList<(char Mark, string Words)> All =
        [('!', "urgent"), ('*', "can hurt"), ('?', "watch"), ('x', "not running"), ('.', "read and nothing to say"), ('-', "no fresh reading")];
}
