using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A value, read or derived, against the limits in force. They rest while the equipment stands, unless the point says always.</summary>
internal static class LimitCheck
{
    /// <param name="against">What the same entry gives for the same by other ways, where it differs; empty when nothing does.</param>
    public static IEnumerable<Finding> Findings(Day day, Point point, double value, DateTimeOffset at, string against = "") =>
        Of(point, value, day.AtWork(point.Equipment, at), against);

    /// <param name="atWork">Whether the point's equipment runs or is being started.</param>
    public static IEnumerable<Finding> Of(Point point, double value, bool atWork, string against = "") =>
        !point.Always && !atWork ? [] : point.Choices.Count > 0 ? OfChoice(point, value) : OfNumber(point, value, against);

    /// <summary>True for what is found here.</summary>
    public static bool IsLimit(Finding finding) => finding.Code.StartsWith("limit.", StringComparison.Ordinal) || finding.Code.StartsWith("choice.", StringComparison.Ordinal);

    private static IEnumerable<Finding> OfChoice(Point point, double value)
    {
        if (point.Choices.FirstOrDefault(c => c.Digit == (int)value) is { Level: { } name } choice && Enum.TryParse<Level>(name, ignoreCase: true, out var level))
        {
            var ask = LimitWords.Ask(point, high: false, level);
            yield return new Finding(level, "choice." + name, point.Tag, Sentence($"{point.Description}: {choice.Text}", ask), []);
        }
    }

    private static IEnumerable<Finding> OfNumber(Point point, double value, string against)
    {
        if (Broken(point.Limits, value) is not { } broken)
        {
            yield break;
        }

        var (level, high, limit) = broken;
        var name = $"{(level == Level.Urgent ? "urgent" : "watch")}-{(high ? "high" : "low")}";
        var side = $"{Words.Difference(point, Math.Abs(value - limit))} {(high ? "above" : "below")} the {(level == Level.Urgent ? "urgent" : "watch")} limit {Words.Value(point, limit)}";
        var is_ = $"{point.Description} {Words.Value(point, value)}, {side}";
        var words = LimitWords.What(point, high, limit) is { } what ? $"{what}: {(value < 0 ? $"{Words.Value(point, -value)} ABOVE it" : $"{Words.Value(point, value)} left")}" : is_;
        IReadOnlyList<string> why = words == is_ ? [] : [is_];
        // Who acts on a dose must know that another way gives another one. Beside what is urgent nothing is doubted.
        words += level == Level.Watch && against.Length > 0 ? $" ({against})" : "";
        yield return new Finding(level, "limit." + name, point.Tag, Sentence(words, LimitWords.Ask(point, high, level)), why);
    }

    private static (Level Level, bool High, double Limit)? Broken(Limits limits, double value) =>
        value > limits.UrgentHigh ? (Level.Urgent, true, limits.UrgentHigh.Value)
        : value < limits.UrgentLow ? (Level.Urgent, false, limits.UrgentLow.Value)
        : value > limits.WatchHigh ? (Level.Watch, true, limits.WatchHigh.Value)
        : value < limits.WatchLow ? (Level.Watch, false, limits.WatchLow.Value)
        : null;

    private static string Sentence(string what, string? ask) => ask is null ? what : $"{what}; {ask}";
}
