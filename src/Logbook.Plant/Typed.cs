namespace Logbook.Plant;

/// <summary>What a person types: numbers and times, read without a guess.</summary>
public static class Typed
{
    /// <summary>
    /// A decimal number. A point is decimal; a comma is decimal too, but refused beside a point or before exactly three
    /// digits, where it could mean thousands. Returns null and a mistake when it cannot be read safely.
    /// </summary>
    public static double? Number(string text, Place place, out Mistake? mistake) => throw new NotImplementedException();

    /// <summary>
    /// ISO 8601 (<c>2026-11-25T10:00</c>, <c>2026-11-25T10:00-05:00</c>) or <c>10:00</c> of the site's day. Without offset it is
    /// site time; one in the repeated hour is refused with both readings named, one in the missing hour is refused.
    /// </summary>
    public static DateTimeOffset? Time(string text, Site site, DateTimeOffset now, Place place, out Mistake? mistake) => throw new NotImplementedException();
}
