using Logbook.Checks;
using Logbook.Checks.Charts;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>One point in a stretch of time: its values, the limits as they were then, and what the trend comes to in words.</summary>
internal sealed record GraphSeries(Point Point, IReadOnlyList<SeriesValue> Values, IReadOnlyList<LimitsThen> Limits, IReadOnlyList<string> Trend)
{
    public static GraphSeries Of(Desk desk, Point point, DateTimeOffset from, DateTimeOffset to)
    {
        var values = desk.Store.Series(point.Tag, from, to);
        return new GraphSeries(point, values, LimitsThen.Of(desk, point.Tag, from, to), point.Choices.Count > 0 ? [] : Course(desk, Checks.Charts.Trend.Of(point, values)));
    }

    /// <summary>Where it goes, when its level changed and what else is odd. What a control chart's limits are drawn from is for who draws one.</summary>
    private static IReadOnlyList<string> Course(Desk desk, TrendResult trend) => trend.Heading.Length == 0 ? [] :
    [
        trend.Heading,
        .. TrendWords.Patterns(trend, at => Say.Time(desk.Site, at, desk.Now)) is { Count: > 0 } patterns ? [string.Join("; ", patterns)] : Array.Empty<string>(),
    ];

    /// <summary>The limits in force at that time.</summary>
    public Limits LimitsAt(DateTimeOffset at) => Limits.LastOrDefault(l => l.From <= at)?.Limits ?? Plant.Limits.None;

    /// <summary>What a value is marked by. Shape says it, colour only repeats it.</summary>
    public (char Mark, Look Look) Mark(SeriesValue value)
    {
        if (value.Value is not { } number)
        {
            return ('n', Look.Faint);
        }

        var (urgent, beyond) = Beyond(value.At, number);
        return (value.CorrectedBy, beyond) switch
        {
            (not null, 0) => ('c', Look.Note),
            (not null, _) => ('C', urgent ? Look.Urgent : Look.Watch),
            (null, 0) => ('o', Look.Strong),
            (null, > 0) => ('^', urgent ? Look.Urgent : Look.Watch),
            _ => ('v', urgent ? Look.Urgent : Look.Watch),
        };
    }

    /// <summary><c>103.4 degC at 10:15, above urgent 103.2; corrected (#812)</c>.</summary>
    public string Words(Session session, SeriesValue value)
    {
        var at = Say.Time(session.Site, value.At, session.Clock);
        var by = value.By.Length > 0 ? $", {Say.Person(session.Site, value.By)}" : "";
        var corrected = value.CorrectedBy is { } seq ? $"; corrected {Say.Ref(seq)}" : "";
        return value.Value is { } number
            ? $"{Say.Value(Point, number, value.Unit)} at {at}{Side(value.At, number)}{corrected}{by} {Say.Ref(value.Seq)}"
            : $"not taken at {at} ({value.Why}){corrected}{by} {Say.Ref(value.Seq)}";
    }

    private string Side(DateTimeOffset at, double number)
    {
        if (Point.Choices.FirstOrDefault(c => c.Digit == number) is { Level: { } level })
        {
            return $", {level}";
        }

        var (limits, (urgent, beyond)) = (LimitsAt(at), Beyond(at, number));
        var limit = (urgent, beyond) switch { (true, > 0) => limits.UrgentHigh, (false, > 0) => limits.WatchHigh, (true, < 0) => limits.UrgentLow, _ => limits.WatchLow };
        return beyond == 0 ? "" : $", {(beyond > 0 ? "above" : "below")} {(urgent ? "urgent" : "watch")} {LimitText.Number(limit!.Value)} of that day";
    }

    private (bool Urgent, int Beyond) Beyond(DateTimeOffset at, double number)
    {
        if (Point.Choices.Count > 0)
        {
            return Point.Choices.FirstOrDefault(c => c.Digit == number)?.Level switch { "urgent" => (true, 1), "watch" => (false, 1), _ => (false, 0) };
        }

        var limits = LimitsAt(at);
        return number > limits.UrgentHigh ? (true, 1)
            : number < limits.UrgentLow ? (true, -1)
            : number > limits.WatchHigh ? (false, 1)
            : number < limits.WatchLow ? (false, -1)
            : (false, 0);
    }
}
