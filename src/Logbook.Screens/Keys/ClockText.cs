using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A time of day as it is typed on a keypad: <c>0935</c> or <c>9:35</c>. It has been, so one that is still to come was yesterday.</summary>
internal static class ClockText
{
    public const string Accepted = "0935 or 9:35; a time still to come means yesterday";

    private static readonly TimeSpan Grace = TimeSpan.FromMinutes(1);

    public static DateTimeOffset? Read(string text, Site site, DateTimeOffset now, out string mistake)
    {
        var typed = text.Trim();
        var clock = typed.Length is 3 or 4 && typed.All(char.IsAsciiDigit) ? $"{typed[..^2]}:{typed[^2..]}" : typed;
        var at = Typed.Time(clock, site, now, Place.Unknown, out var wrong);
        if (at > now + Grace && clock.Length <= 5)
        {
            at = Typed.Time(clock, site, now.AddDays(-1), Place.Unknown, out wrong);
        }

        mistake = wrong?.ToString() ?? (at > now + Grace ? "that time is still to come" : "");
        return mistake.Length == 0 ? at : null;
    }
}
