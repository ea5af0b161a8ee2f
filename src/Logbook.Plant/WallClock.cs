namespace Logbook.Plant;

/// <summary>What a wall-clock time of a zone may mean.</summary>
internal static class WallClock
{
    private static readonly TimeSpan Around = TimeSpan.FromHours(36);

    /// <summary>
    /// The offsets under which the zone's clock showed this time, the earlier instant first: none when the clock was put
    /// forward over it, two when it was put back over it. Asks about instants alone, for these are never in doubt.
    /// </summary>
    public static IReadOnlyList<TimeSpan> Offsets(TimeZoneInfo zone, DateTime local)
    {
        var asUtc = new DateTimeOffset(local, TimeSpan.Zero);
        var possible = new[] { zone.GetUtcOffset(asUtc - Around), zone.GetUtcOffset(asUtc + Around) };
        return [.. possible.Distinct().Where(offset => zone.GetUtcOffset(asUtc - offset) == offset).OrderDescending()];
    }
}
