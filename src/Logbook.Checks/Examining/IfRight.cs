using Logbook.Checks.CrossExamination;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>
/// What a figure that guards people would be with the doubted reading right, where that is worse than what is shown. An error to
/// the comfortable side is the one that hurts: it is said beside an alarm too, for it takes nothing from it.
/// </summary>
internal static class IfRight
{
    private const string Code = "margin";

    /// <summary>The sentence; null where nothing is named, or no such figure would be worse.</summary>
    public static string? Words(Day day, Sheet sheet, Trail trail) =>
        Worse(day, sheet, trail) is var (_, guard, shown, right) ? $"If so, {guard.Description} ({guard.Tag}) is {Checks.Words.Value(guard, right)}, not {Checks.Words.Value(guard, shown)}." : null;

    /// <summary>The same where nothing may be doubted: no reading is asked for, and the worse figure is the one to go by.</summary>
    public static IEnumerable<Finding> BesideAlarm(Day day, Sheet sheet, Trail trail) => Worse(day, sheet, trail) is var (reading, guard, shown, right)
        ? [new Finding(Level.Watch, Code, guard.Tag, $"{guard.Description} may be {Checks.Words.Value(guard, right)}, not {Checks.Words.Value(guard, shown)}: {reading} reads on the comfortable side of what stands beside it; go by the worse of the two", [])]
        : [];

    private static (string Reading, Point Guard, double Shown, double Right)? Worse(Day day, Sheet sheet, Trail trail)
    {
        var result = trail.Last[^1].Result;
        if (result.Verdict.Named is not { } named || named >= trail.Line.Readings)
        {
            return null;
        }

        var (tag, bias) = (trail.Line.Subjects[named].Name, result.Suspects.First(s => s.Parameter == named).Bias);
        List<(Point Point, double Value)> guards =
        [
            .. from shown in sheet.Results
               let point = day.Site.FindPoint(shown.Point ?? "")
               where point is { Always: true } && trail.Graph.Behind(point.Tag).Contains(tag)
               select (point, shown.Value),
        ];
        if (guards.Count == 0 || !sheet.Readings.Any(r => r.Point == tag && r.Value is not null))
        {
            return null;
        }

        PointReading[] readings = [.. sheet.Readings.Where(r => !r.NotTaken).Select(r => new PointReading(day.Site.FindPoint(r.Point)!, r.Point == tag ? r with { Value = r.Value - bias } : r, UnitGiven: false))];
        var results = EntryCalculations.Run(day, readings, sheet.At).Results;
        return guards.Select(g => (tag, g.Point, g.Value, Right: results.FirstOrDefault(r => r.Point == g.Point.Tag)?.Value ?? g.Value))
            .Where(g => IsWorse(g.Point, g.Value, g.Right)).Select(g => ((string, Point, double, double)?)g).FirstOrDefault();
    }

    private static bool IsWorse(Point point, double shown, double right)
    {
        var seen = Math.Abs(right - shown) >= Math.Pow(10, -point.Decimals);
        return seen && (right < shown ? point.Limits is { WatchLow: not null } or { UrgentLow: not null } : point.Limits is { WatchHigh: not null } or { UrgentHigh: not null });
    }
}
