using System.Buffers;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Logbook.Plant;

/// <summary>A number and the unit typed behind it; no unit means the one of whatever it is meant for.</summary>
public sealed record Measured(double Value, Unit? Unit);

public static partial class Typed
{
    private static readonly SearchValues<char> NumberChars = SearchValues.Create("0123456789.,+-\u2212");

    /// <summary>A number with or without a unit: <c>103.4</c>, <c>103.4 degC</c>, <c>5%</c>.</summary>
    /// <param name="wanted">What it is to be given in, for the words of a unit that is unknown; null when anything may be.</param>
    public static Measured? Measured(string text, Place place, out Mistake? mistake, Unit? wanted = null)
    {
        var typed = text.Trim();
        var end = typed.AsSpan().IndexOfAnyExcept(NumberChars);
        if (end > 0 && ExponentForm().IsMatch(typed[end..]))
        {
            end = -1; // 1e400: a number that nobody reads off an instrument, and no unit
        }

        var unitText = end < 0 ? "" : typed[end..].Trim();
        var unit = unitText.Length == 0 ? null : Units.Find(unitText);
        if (Number(end <= 0 ? typed : typed[..end], place, out mistake) is not { } value)
        {
            return null;
        }

        if (unitText.Length > 0 && unit is null)
        {
            mistake = Units.Unknown(unitText, place, wanted);
            return null;
        }

        return new Measured(value, unit);
    }

    /// <summary>A length of time: <c>15m</c>, <c>1h30m</c>, <c>2d</c>, <c>5s</c>.</summary>
    public static TimeSpan? Duration(string text, Place place, out Mistake? mistake)
    {
        var match = DurationForm().Match(text.Trim());
        mistake = match.Success && match.Length > 0
            ? null
            : new Mistake(place, $"'{text.Trim()}' is no length of time", "accepted: days, hours, minutes, seconds, as in 15m, 1h30m, 2d");
        return mistake is null
            ? new TimeSpan(Part(match, "d"), Part(match, "h"), Part(match, "m"), Part(match, "s"))
            : null;
    }

    [GeneratedRegex(@"\A(?:(?<d>[0-9]{1,4})d)?(?:(?<h>[0-9]{1,4})h)?(?:(?<m>[0-9]{1,4})m)?(?:(?<s>[0-9]{1,5})s)?\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DurationForm();

    [GeneratedRegex(@"\A[eE][+-]?[0-9]", RegexOptions.None, 1000)]
    private static partial Regex ExponentForm();

    private static int Part(Match match, string group) =>
        match.Groups[group].Success ? int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) : 0;
}
