using System.Globalization;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>Limits in words: <c>watch outside 95 to 102, urgent above 103.2</c>; empty when there are none.</summary>
internal static class LimitText
{
    public static string Of(Limits limits) =>
        string.Join(", ", new[] { Of("watch", limits.WatchLow, limits.WatchHigh), Of("urgent", limits.UrgentLow, limits.UrgentHigh) }.Where(t => t.Length > 0));

    public static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    private static string Of(string word, double? low, double? high) => (low, high) switch
    {
        (null, null) => "",
        ({ } l, null) => $"{word} below {Number(l)}",
        (null, { } h) => $"{word} above {Number(h)}",
        ({ } l, { } h) => $"{word} outside {Number(l)} to {Number(h)}",
    };
}
