namespace Logbook.Demo.Instruments;

/// <summary>Hours that only count up and start again: tag to hours at a time.</summary>
internal static class HoursReadings
{
    /// <summary>The mud filter's precoat is renewed twice a day.</summary>
    private const double PrecoatEvery = 12;

    /// <summary>The white liquor filter is washed with acid about every two weeks.</summary>
    private const double WhiteLiquorWashEvery = 320;

    public static IReadOnlyDictionary<string, Func<DateTimeOffset, double>> ByTag { get; } =
        new Dictionary<string, Func<DateTimeOffset, double>>(StringComparer.Ordinal)
        {
            ["MF-HP"] = at => Hours(at) % PrecoatEvery,
            ["WF-HW"] = at => Hours(at) % WhiteLiquorWashEvery,
        };

    private static double Hours(DateTimeOffset at) => (at - DateTimeOffset.UnixEpoch).TotalHours;
}
