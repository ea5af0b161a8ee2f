using Logbook.Journal;

namespace Logbook.Checks;

/// <summary>A change since the last reading that is larger than believable. Within an hour a whole hour's step is allowed.</summary>
internal static class StepCheck
{
    public const string Code = "step";

    /// <summary>What a step ends with, as long as nothing bears it out.</summary>
    public const string OrMisread = ": the plant changed, or misread";

    /// <param name="urgent">The value is beyond its urgent limit: it counts as true, and nothing beside it doubts it.</param>
    public static IEnumerable<Finding> Findings(Day day, PointReading judged, bool urgent)
    {
        var point = judged.Point;
        if (judged.Number is not { } value || Allowed(day, judged) is not { } allowed)
        {
            yield break;
        }

        var (last, most) = allowed;
        var change = value - last.Value!.Value;
        if (Math.Abs(change) > most && !Returns(day, judged, last, value))
        {
            yield return new Finding(Level.Watch, Code, point.Tag,
                $"{point.Description} {Words.Value(point, value)} changed by {Words.Difference(point, Math.Abs(change))} since {Words.Time(last.At)}; more than {Words.Difference(point, most)} is unusual{(urgent ? "" : OrMisread)}",
                [$"{Words.Value(point, last.Value.Value)} at {Words.Time(last.At)}", $"largest believable change {Words.Number(point.Step!.Value)} {point.Unit} an hour"]);
        }
    }

    /// <summary>The last reading was doubted for such a step itself, and this one is where the point was before: that one was wrong, or it is over.</summary>
    private static bool Returns(Day day, PointReading judged, SeriesValue doubted, double value) =>
        day.State.Findings.GetValueOrDefault(judged.Point.Tag)?.Exists(f => f.Finding.Code == Code && f.Seq == doubted.Seq) == true
        && day.Compared(judged.Point, doubted.At - judged.Point.Stale, doubted.At).LastOrDefault(v => v.Seq != doubted.Seq) is { Value: { } before } earlier
        && Math.Abs(value - before) <= judged.Point.Step!.Value * Math.Max(1, (judged.Reading.At - earlier.At).TotalHours);

    /// <summary>The last reading, and how far this one may lie from it; null when they cannot be compared.</summary>
    internal static (SeriesValue Last, double Most)? Allowed(Day day, PointReading judged)
    {
        var point = judged.Point;
        var at = judged.Reading.At;
        if (point.Step is not { } step || day.LastCompared(point, at) is not { } last || at - last.At > point.Stale)
        {
            return null;
        }

        var steady = point.Always || (day.AtWork(point.Equipment, at) && day.SameStateSince(point.Equipment, last.At));
        return steady ? (last, step * Math.Max(1, (at - last.At).TotalHours)) : null;
    }
}
