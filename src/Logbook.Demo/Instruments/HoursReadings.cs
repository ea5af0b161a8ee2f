namespace Logbook.Demo.Instruments;

/// <summary>Hours that only count up and start again: tag to hours at a time.</summary>
internal static class HoursReadings
{
    /// <summary>The mud filter's precoat is renewed twice a day.</summary>
    private const double PrecoatEvery = 12;

    private const double PrecoatShift = 5;

    /// <summary>The white liquor filter is washed with acid about every two weeks.</summary>
    private const double WhiteLiquorWashEvery = 320;

    public static IReadOnlyDictionary<string, Func<DateTimeOffset, double>> ByTag { get; } =
        new Dictionary<string, Func<DateTimeOffset, double>>(StringComparer.Ordinal)
        {
            ["MF-HP"] = at => (Hours(at) + PrecoatShift) % PrecoatEvery,
            ["WF-HW"] = at => Hours(at) % WhiteLiquorWashEvery,
        };

    /// <summary>The times at which the precoat is renewed, in order.</summary>
    public static IEnumerable<DateTimeOffset> PrecoatRenewals(DateTimeOffset from, DateTimeOffset to)
    {
        var first = from.AddHours(PrecoatEvery - ((Hours(from) + PrecoatShift) % PrecoatEvery));
        for (var at = first; at < to; at = at.AddHours(PrecoatEvery))
        {
            yield return at;
        }
    }

    private static double Hours(DateTimeOffset at) => (at - DateTimeOffset.UnixEpoch).TotalHours;
}
