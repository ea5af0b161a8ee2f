using System.Globalization;
using Logbook.Handover;

namespace Logbook.Notes;

/// <summary>A curve in words, for paper, for those who listen, and beside the picture.</summary>
internal static class TrendWords
{
    public static string Of(NoteTrend trend)
    {
        var (first, last) = (trend.Values[0], trend.Values[^1]);
        var (low, high) = (trend.Values.MinBy(v => v.Value), trend.Values.MaxBy(v => v.Value));
        string At((DateTimeOffset At, double Value) v) => $"{Number(v.Value)} at {Clock(trend, v.At)}";
        return $"{trend.Title}, {trend.Unit}: {trend.Values.Count} values, first {At(first)}, lowest {At(low)}, highest {At(high)}, last {At(last)}.{Limits(trend)}";
    }

    /// <summary>A value with no more digits than it needs.</summary>
    public static string Number(double value) => Math.Round(value, 4).ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>The time of day, with its day when the curve is longer than one.</summary>
    public static string Clock(NoteTrend trend, DateTimeOffset at) =>
        at.ToString(trend.Values[^1].At - trend.Values[0].At > TimeSpan.FromHours(24) ? "ddd d MMM HH:mm" : "HH:mm", CultureInfo.InvariantCulture);

    private static string Limits(NoteTrend trend)
    {
        (string Name, double? Limit)[] limits =
            [("urgent below", trend.UrgentLow), ("watch below", trend.WatchLow), ("watch above", trend.WatchHigh), ("urgent above", trend.UrgentHigh)];
        var set = limits.Where(l => l.Limit is not null).Select(l => $"{l.Name} {Number(l.Limit!.Value)}").ToList();
        return set.Count == 0 ? " No limits are set." : $" Limits now in force: {string.Join(", ", set)}.";
    }
}
