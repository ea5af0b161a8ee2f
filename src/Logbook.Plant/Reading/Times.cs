using System.Globalization;

namespace Logbook.Plant.Reading;

/// <summary>A time of day as the site files write it.</summary>
internal static class Times
{
    public static TimeOnly? Parse(string text) =>
        TimeOnly.TryParseExact(text.Trim(), "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;
}
