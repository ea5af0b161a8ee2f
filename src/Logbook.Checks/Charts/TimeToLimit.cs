namespace Logbook.Checks.Charts;

/// <summary>When a straight line, continued, meets a limit; valid only while nothing is changed.</summary>
/// <param name="Hours">From now; null when no trend is shown.</param>
/// <param name="Earliest">Not before; null when no trend is shown.</param>
/// <param name="Latest">Null when the line may also never get there.</param>
internal sealed record TimeToLimit(double? Hours, double? Earliest, double? Latest)
{
    public static TimeToLimit NoTrend { get; } = new(null, null, null);

    /// <summary>The line's own answer, with the interval that the slope's interval gives.</summary>
    public static TimeToLimit Of(TheilSen line, double limit, double now)
    {
        if (line.MayBeLevel)
        {
            return NoTrend;
        }

        var hours = Hit(line, line.Slope, limit, now);
        var ends = new[] { Hit(line, line.Low, limit, now), Hit(line, line.High, limit, now) }.Order().ToList();
        return hours > 0 ? new TimeToLimit(hours, Math.Max(0, ends[0]), ends[1]) : NoTrend;
    }

    private static double Hit(TheilSen line, double slope, double limit, double now) => line.MedianT + ((limit - line.MedianX) / slope) - now;
}
