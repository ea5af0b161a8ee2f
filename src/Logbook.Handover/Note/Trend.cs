using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// A straight line through a point's values of the shift (least squares), when it truly leads somewhere: the change over
/// the shift exceeds twice the uncertainty of a difference of two readings, the slope exceeds three times its standard
/// error, and at that rate a limit is reached within a day. Of a tank the later rate counts: its newest stretch and the line
/// through its newest four hours are looked at too, and what reaches a limit sooner is told, since slower hours before it would
/// name a time too late, or hide that it runs empty.
/// </summary>
internal sealed record Trend(IReadOnlyList<Seen> Values, double PerHour, double Limit, string LimitName, DateTimeOffset ReachedAt)
{
    private const double Ahead = 24;

    // What follows is judgement, no source. Two readings close together say little of a rate, and a short stretch says little of a day.
    private static readonly TimeSpan Shortest = TimeSpan.FromMinutes(30), Longest = TimeSpan.FromHours(2);
    private const double AheadOfAStretch = 8;
    private static readonly TimeSpan Newest = TimeSpan.FromHours(4);
    private const int FewestOfNewest = 4;

    // How often the uncertainty of a difference of two readings a change of a tank must be that no scatter explains.
    private const double Far = 4;

    /// <summary>The reading since which it goes at this rate, where the newest stretch or hours tell; null where the whole shift does.</summary>
    public Seen? From { get; init; }

    /// <summary>Beside these the rate of the whole shift; null where that leads nowhere.</summary>
    public double? OverTheShift { get; init; }

    /// <summary>The reading since which it has not moved, though it did before; then the rate and the limit tell of nothing to come.</summary>
    public Seen? SteadySince { get; init; }

    public static Trend? Of(IReadOnlyList<Seen> values)
    {
        var point = values[0].Point;
        if (point.Choices.Count > 0)
        {
            return null;
        }

        // A walk that was saved in parts is one: what was computed with each part has the same minute.
        values = [.. values.GroupBy(v => v.At.Ticks / TimeSpan.TicksPerMinute).Select(g => g.Last())];

        var whole = Line(values);
        var trend = whole is var (slope, end, _) ? Reaching(values, slope, Furthest(slope, end, values[^1].Value), Ahead) : null;
        trend = trend is null ? null : trend with { SteadySince = Steady(values, trend.PerHour) };
        List<Trend> newest = Stock.IsLevel(point) ? [.. Stretches(values, whole?.PerHour).Append(OfNewest(values, whole?.PerHour)).OfType<Trend>()] : [];
        return newest.Count == 0 ? trend : newest.Append(trend).OfType<Trend>().Where(t => t.SteadySince is null).MinBy(t => t.ReachedAt);
    }

    /// <summary>
    /// The first of at least three readings, over two hours or more, that uncertainty alone explains beside each other, up to the
    /// newest, though at the rate of the line they would lie further apart; null when it still moves.
    /// </summary>
    private static Seen? Steady(IReadOnlyList<Seen> values, double perHour)
    {
        var bound = 2 * Math.Sqrt(2) * values.Max(v => v.U);
        var last = values.Reverse().TakeWhile((_, i) => Within(values.TakeLast(i + 1), bound)).ToList();
        var stretch = last[0].At - last[^1].At;
        return last.Count >= 3 && stretch >= Longest && Math.Abs(perHour) * stretch.TotalHours > bound ? last[^1] : null;
    }

    private static bool Within(IEnumerable<Seen> values, double bound) => values.Max(v => v.Value) - values.Min(v => v.Value) <= bound;

    /// <summary>Slope, the value at its end and the slope's standard error; null when it does not stand out from scatter and uncertainty.</summary>
    private static (double PerHour, double End, double Error)? Line(IReadOnlyList<Seen> values)
    {
        var start = values[0].At;
        var hours = values.Select(v => (v.At - start).TotalHours).ToList();
        var (meanT, meanY) = (hours.Average(), values.Average(v => v.Value));
        var sxx = hours.Sum(t => (t - meanT) * (t - meanT));
        if (values.Count < 3 || sxx <= 0)
        {
            return null;
        }

        var slope = values.Zip(hours, (v, t) => (t - meanT) * (v.Value - meanY)).Sum() / sxx;
        var rest = values.Zip(hours, (v, t) => Math.Pow(v.Value - meanY - (slope * (t - meanT)), 2)).Sum();
        var u = values.Max(v => v.U);
        var error = Math.Max(u, Math.Sqrt(rest / (values.Count - 2))) / Math.Sqrt(sxx);
        var change = Math.Abs(slope) * (hours[^1] - hours[0]);
        return change <= 2 * Math.Sqrt(2) * u || Math.Abs(slope) <= 3 * error ? null : (slope, meanY + (slope * (hours[^1] - meanT)), error);
    }

    /// <summary>
    /// A tank's newest readings, from each of the last two hours to the newest one, or from the one before it where those are
    /// further apart: those that changed far more than uncertainty explains, and far more than the whole shift would have it.
    /// </summary>
    private static IEnumerable<Trend> Stretches(IReadOnlyList<Seen> values, double? overTheShift)
    {
        var last = values[^1];
        var before = values.Where(v => last.At - v.At >= Shortest).ToList();
        var near = before.FindAll(v => last.At - v.At <= Longest);
        foreach (var from in near.Count > 0 ? near : before.TakeLast(1))
        {
            var hours = (last.At - from.At).TotalHours;
            var change = last.Value - from.Value;
            var more = change - ((overTheShift ?? 0) * hours);
            // Where the site says nothing of a level's uncertainty, one of its percents.
            var far = Far * Math.Sqrt(2) * (Math.Max(from.U, last.U) is > 0 and var u ? u : 1);
            if (Math.Abs(change) > far && more * Math.Sign(change) > far && Reaching(values, change / hours, last.Value, AheadOfAStretch) is { } trend)
            {
                yield return trend with { From = from, OverTheShift = overTheShift };
            }
        }
    }

    /// <summary>The line through a tank's newest hours, where it goes on faster that way than the whole shift has it, by more than its scatter explains.</summary>
    private static Trend? OfNewest(IReadOnlyList<Seen> values, double? overTheShift)
    {
        var newest = values.Where(v => values[^1].At - v.At <= Newest).ToList();
        return newest.Count >= FewestOfNewest && newest.Count < values.Count && Line(newest) is var (slope, end, error)
            && (slope - (overTheShift ?? 0)) * Math.Sign(slope) > 3 * error
            && Reaching(values, slope, Furthest(slope, end, newest[^1].Value), AheadOfAStretch) is { } trend
                ? trend with { From = newest[0], OverTheShift = overTheShift }
                : null;
    }

    private static double Furthest(double slope, double end, double last) => slope > 0 ? Math.Max(end, last) : Math.Min(end, last);

    /// <summary>From where it stands furthest: a time that the newest reading makes too late would let people wait.</summary>
    private static Trend? Reaching(IReadOnlyList<Seen> values, double slope, double furthest, double within) =>
        Next(values[0].Point, furthest, slope) is var (limit, name) && (limit - furthest) / slope is var ahead && ahead <= within
            ? new Trend(values, slope, limit, name, values[^1].At.AddHours(ahead))
            : null;

    /// <summary>The next limit in the direction of the slope, for a tank beyond its limits where it is empty or full; null when there is none.</summary>
    /// <param name="last">The line's or the reading's own value at its end, whichever lies further that way: what either has passed is no forecast.</param>
    private static (double Limit, string Name)? Next(Point point, double last, double slope)
    {
        var limits = point.Limits;
        var tank = Stock.IsLevel(point);
        (double? Limit, string Name)[] ahead = slope > 0
            ? [(limits.WatchHigh, "the upper watch limit"), (limits.UrgentHigh, "the upper urgent limit"), (tank ? point.Highest : null, "the top of the tank")]
            : [(limits.WatchLow, "the lower watch limit"), (limits.UrgentLow, "the lower urgent limit"), (tank ? point.Lowest : null, "the bottom of the tank")];
        return ahead.Where(l => l.Limit is { } limit && (limit - last) * slope > 0).Select(l => ((double, string)?)(l.Limit!.Value, l.Name)).FirstOrDefault();
    }
}
