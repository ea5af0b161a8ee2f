using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What a tank or silo held when it was last read.</summary>
/// <param name="Fresh">How long the value may be used.</param>
public sealed record Stock(string Point, string Title, string Value, DateTimeOffset At, TimeSpan Fresh, long Seq)
{
    /// <summary>Area code of the tank.</summary>
    public required string Area { get; init; }

    /// <summary>True for the hours that it lasts, false for its level.</summary>
    public required bool Lasts { get; init; }

    private static readonly string[] Tanks =
        ["raw-green-liquor", "green-liquor-tank", "white-liquor-tank", "lime-mud-tank", "weak-wash", "lime"];

    /// <summary>Levels of the tanks, and derived hours that they last where the site computes them; hours of an earlier level are no reserve any more.</summary>
    internal static IReadOnlyList<Stock> Of(Site site, State state)
    {
        var read = Read(site, state);
        return [.. read.Where(hours => !read.Exists(level => level.At > hours.At && IsHoursOf(site, site.FindPoint(hours.Point)!, site.FindPoint(level.Point)!)))];
    }

    private static List<Stock> Read(Site site, State state) =>
    [
        .. site.Points.Where(p => IsStock(site, p)).OrderBy(p => Plant.Area.All.ToList().IndexOf(p.Area))
            .Select(p => state.Latest.TryGetValue(p.Tag, out var latest) && latest.Value is { } value
                ? new Stock(p.Tag, Say.Visible(p.Description), Say.Value(p, value, latest.Unit), ReadAt(site, state, p, latest), p.Stale, latest.Seq) { Area = p.Area, Lasts = !IsLevel(p) }
                : null)
            .OfType<Stock>(),
    ];

    /// <summary>Hours rest on a level: they are as old as that reading, however late they were worked out from it.</summary>
    private static DateTimeOffset ReadAt(Site site, State state, Point point, SeriesValue latest) => site.Calculations
        .Where(c => c.Outputs.Values.Contains(point.Tag, StringComparer.OrdinalIgnoreCase)).SelectMany(c => c.Inputs.Values).OfType<InputSource.FromPoint>()
        .Select(i => site.FindPoint(i.Tag) is { } input && IsLevel(input) ? state.Latest.GetValueOrDefault(i.Tag) : null)
        .Where(level => level is { Value: not null } && level.At < latest.At)
        .Select(level => level!.At).Append(latest.At).Min();

    /// <summary>True for the level of a tank or silo.</summary>
    internal static bool IsLevel(Point point) => Tanks.Contains(point.Area, StringComparer.Ordinal)
        && point.Unit.Name == "%" && point.Description.Contains("level", StringComparison.OrdinalIgnoreCase);

    /// <summary>True for the hours that the tank of that level lasts.</summary>
    internal static bool IsHoursOf(Site site, Point hours, Point level) => IsLevel(level) && !IsLevel(hours) && IsStock(site, hours) && hours.Area == level.Area
        && (hours.Equipment is null || level.Equipment is null || hours.Equipment == level.Equipment);

    private static bool IsStock(Site site, Point point) => IsLevel(point)
        || (Tanks.Contains(point.Area, StringComparer.Ordinal) && point.Kind == PointKind.Derived && point.Unit.Name == "h" && !IsStay(site, point));

    /// <summary>How long liquor stays in a tank is no reserve.</summary>
    private static bool IsStay(Site site, Point point) =>
        site.Calculations.Any(c => c.Use == "residence-time" && c.Outputs.Values.Contains(point.Tag, StringComparer.OrdinalIgnoreCase));
}
