using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// A straight line through a point's values of the shift (least squares), when it truly leads somewhere: the change over
/// the shift exceeds twice the uncertainty of a difference of two readings, the slope exceeds three times its standard
/// error, and at that rate a limit is reached within a day.
/// </summary>
internal sealed record Trend(IReadOnlyList<Seen> Values, double PerHour, double Limit, string LimitName, DateTimeOffset ReachedAt)
{
    private const double Ahead = 24;

    public static Trend? Of(IReadOnlyList<Seen> values)
    {
        var point = values[0].Point;
        if (values.Count < 3 || point.Choices.Count > 0)
        {
            return null;
        }

        var start = values[0].At;
        var hours = values.Select(v => (v.At - start).TotalHours).ToList();
        var (meanT, meanY) = (hours.Average(), values.Average(v => v.Value));
        var sxx = hours.Sum(t => (t - meanT) * (t - meanT));
        if (sxx <= 0)
        {
            return null;
        }

        var slope = values.Zip(hours, (v, t) => (t - meanT) * (v.Value - meanY)).Sum() / sxx;
        var rest = values.Zip(hours, (v, t) => Math.Pow(v.Value - meanY - (slope * (t - meanT)), 2)).Sum();
        var u = values.Max(v => v.U);
        var error = Math.Max(u, Math.Sqrt(rest / (values.Count - 2))) / Math.Sqrt(sxx);
        var change = Math.Abs(slope) * (hours[^1] - hours[0]);
        if (change <= 2 * Math.Sqrt(2) * u || Math.Abs(slope) <= 3 * error)
        {
            return null;
        }

        var last = meanY + (slope * (hours[^1] - meanT));
        return Next(point, slope > 0 ? Math.Max(last, values[^1].Value) : Math.Min(last, values[^1].Value), slope) is var (limit, name) && (limit - last) / slope is var ahead and <= Ahead
            ? new Trend(values, slope, limit, name, values[^1].At.AddHours(ahead))
            : null;
    }

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
