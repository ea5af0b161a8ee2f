using System.Globalization;

namespace Logbook.Checks.Charts;

/// <summary>What a trend comes to, as a person would say it.</summary>
public static class TrendWords
{
    // Three days, in hours: a straight line says nothing of what lies further ahead.
    private const double Sight = 72;

    internal static IReadOnlyList<string> Of(TrendResult trend)
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
        words.AddRange(Patterns(trend, Checks.Words.Time));
        return words;
    }

    /// <summary>When its level changed, and each pattern that chance does not explain, with the last time that it began.</summary>
    public static IReadOnlyList<string> Patterns(TrendResult trend, Func<DateTimeOffset, string> time)
    {
        var words = new List<string>();
        if (trend.Change is { } change)
        {
            words.Add($"the level changed after {time(change.At)}");
        }

        // The sums are for readings that do not resemble the one before: of others they speak too soon.
        if (trend is { LimitsFrom: not "sd", Cusum: { SignalIndex: not null, StartIndex: { } start } })
        {
            words.Add($"a small lasting shift since {time(trend.Points[start - 1].At)}, by cumulative sums");
        }

        words.AddRange(trend.Signals.GroupBy(s => s.Rule, StringComparer.Ordinal).Select(rule =>
            $"{Rule(rule.Key)}: {time(rule.Max(s => s.At))}{(rule.Count() > 1 ? $", and {(rule.Count() - 1).ToString(CultureInfo.InvariantCulture)} before" : "")}"));
        return words;
    }

    private static string Rule(string rule) => rule switch
    {
        "beyond-3-sigma" => "beyond three sigma of its centre",
        "nine-on-one-side" => "nine in a row on one side of its centre",
        "six-steadily" => "six in a row that rise or fall",
        "fifteen-too-quiet" => "fifteen in a row closer to the centre than usual",
        "sudden" => "far from what the reading before lets expect",
        _ => "the same value more often than its resolution lets expect",
    };

    /// <summary>Where the series is going.</summary>
    internal static string Heading(TrendResult trend)
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
            ? $"{way}; {Ahead(Words(to.Limit), hours, first, to.High)}"
            : way;
    }

    /// <summary>True when the limit ahead may be met within the time that a straight line can be trusted for.</summary>
    internal static bool HasLimitInSight(TrendResult trend) => trend.HoursToLimit?.Low <= Sight;

    /// <summary>When the limit is met, as far as it can be seen: the earliest time counts, for it is the one to be ready for.</summary>
    private static string Ahead(string limit, double hours, double first, double? last) => first > Sight ? "no limit in sight within three days"
        : hours > Sight ? $"reaches {limit} in {Number(first)} h at the earliest, more likely after three days, if nothing is changed"
        : $"reaches {limit} in about {Number(hours)} h ({Number(first)} to {(last is not { } late ? "never" : late > Sight ? "more than three days" : Number(late))}) if nothing is changed";

    /// <summary>A limit by its name in the data.</summary>
    private static string Words(string limit) => limit.Split('_') is [var level, var side] ? $"the {(side == "high" ? "upper" : "lower")} {level} limit" : limit;

    /// <summary>Three digits that count, and never a power of ten.</summary>
    private static string Number(double value) =>
        double.Parse(value.ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).ToString("0.##########", CultureInfo.InvariantCulture);
}
