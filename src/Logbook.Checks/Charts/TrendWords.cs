using System.Globalization;

namespace Logbook.Checks.Charts;

/// <summary>What a trend comes to, as a person would say it.</summary>
internal static class TrendWords
{
    public static IReadOnlyList<string> Of(TrendResult trend)
    {
        var words = new List<string>();
        if (trend.Sd == 0)
        {
            return ["all readings are the same: nothing can be said of its spread"];
        }

        if (trend.Provisional)
        {
            words.Add($"limits from {trend.N} readings are provisional");
        }

        if (trend.LimitsFrom == "sd")
        {
            words.Add("neighbouring readings resemble each other: limits from the standard deviation, no run rules");
        }

        words.Add(Heading(trend));
        if (trend.Change is { } change)
        {
            words.Add($"the level changed after reading {change.AfterIndex.ToString(CultureInfo.InvariantCulture)}");
        }

        return words;
    }

    /// <summary>Where the series is going.</summary>
    public static string Heading(TrendResult trend)
    {
        if (trend.Sd == 0)
        {
            return "all readings are the same";
        }

        if (trend.Slope is not { } slope)
        {
            return "too few readings for a trend";
        }

        if (slope.Low is not { } low || slope.High is not { } high || (low <= 0 && high >= 0))
        {
            return "no trend shown";
        }

        var way = $"{(slope.PerHour > 0 ? "rising" : "falling")} {Number(Math.Abs(slope.PerHour))} {trend.Unit} an hour";
        return trend.HoursToLimit is { Value: { } hours, Low: { } first } to
            ? $"{way}; reaches {Words(to.Limit)} in about {Number(hours)} h ({Number(first)} to {(to.High is { } last ? Number(last) : "never")}) if nothing is changed"
            : way;
    }

    /// <summary>A limit by its name in the data.</summary>
    private static string Words(string limit) => limit.Split('_') is [var level, var side] ? $"the {(side == "high" ? "upper" : "lower")} {level} limit" : limit;

    private static string Number(double value) => value.ToString("G3", CultureInfo.InvariantCulture);
}
