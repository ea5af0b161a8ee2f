using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>Where a series is broken, so that no difference may be formed across it.</summary>
internal static class Breaks
{
    /// <summary>A pause longer than so many usual intervals is a gap.</summary>
    private const double Long = 3;

    /// <returns>For each time, whether the series is broken just before it.</returns>
    public static IReadOnlyList<bool> Of(IReadOnlyList<DateTimeOffset> times, IReadOnlyList<DateTimeOffset> given)
    {
        var pauses = times.Skip(1).Zip(times, (a, b) => (a - b).TotalHours).ToList();
        var usual = pauses.Count == 0 ? 0 : pauses.Median();
        return
        [
            .. times.Select((t, i) => i > 0 && ((usual > 0 && pauses[i - 1] > Long * usual) || given.Any(g => g > times[i - 1] && g <= t))),
        ];
    }
}
