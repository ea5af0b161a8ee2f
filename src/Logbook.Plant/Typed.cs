using System.Globalization;

namespace Logbook.Plant;

/// <summary>What a person types: numbers and times, read without a guess.</summary>
public static partial class Typed
{
    /// <summary>
    /// A decimal number. A point is decimal; a comma is decimal too, but refused beside a point or before exactly three
    /// digits, where it could mean thousands. Returns null and a mistake when it cannot be read safely.
    /// </summary>
    public static double? Number(string text, Place place, out Mistake? mistake)
    {
        var number = text.Trim().Replace('\u2212', '-');
        var digits = number.StartsWith('-') || number.StartsWith('+') ? number[1..] : number;
        mistake = WhyNoNumber(digits) is { } why ? new Mistake(place, $"'{text.Trim()}' {why.Wrong}", why.Accepted) : null;
        return mistake is null ? double.Parse(number.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture) : null;
    }

    private const string Plain = "accepted: digits with at most one decimal point or comma, as in 103.4";

    private static (string Wrong, string Accepted)? WhyNoNumber(string digits)
    {
        var commas = digits.Count(c => c == ',');
        var points = digits.Count(c => c == '.');
        if (digits.Length == 0)
        {
            return ("is no number", Plain);
        }

        if (digits.Any(c => !char.IsAsciiDigit(c) && c is not ('.' or ',')))
        {
            return ("is no number", Plain);
        }

        if (commas > 0 && points > 0)
        {
            return ("has a comma beside a point and could be read in two ways", Plain);
        }

        if (commas + points > 1 || !char.IsAsciiDigit(digits[0]) || !char.IsAsciiDigit(digits[^1]))
        {
            return ("is no number", Plain);
        }

        if (commas == 1 && digits.Length - digits.IndexOf(',', StringComparison.Ordinal) == 4)
        {
            return ("could mean thousands or decimals", $"write {digits.Replace(',', '.')} or {digits.Replace(",", "", StringComparison.Ordinal)}");
        }

        return digits.Length > 20 ? ("has more digits than any instrument", Plain) : null;
    }
}
