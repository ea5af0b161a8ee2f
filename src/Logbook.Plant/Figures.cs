using System.Globalization;

namespace Logbook.Plant;

/// <summary>Numbers that are only known roughly, as a person writes them.</summary>
public static class Figures
{
    /// <summary>Two figures that count, never with a power of ten: <c>0.40</c> is 0.4, 0.041 stays, 1534 stays.</summary>
    public static string Two(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value.ToString(CultureInfo.InvariantCulture);
        }

        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 15);
        return value.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
    }

    /// <summary>So many decimals; what rounds to nothing has no sign: <c>0.0</c>, never <c>-0.0</c>.</summary>
    /// <param name="whole">True for what somebody read: a value that is not zero never stands there as zero.</param>
    public static string Fixed(double value, int decimals, bool whole = false)
    {
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        if (whole && value != 0 && text.All(c => c is '-' or '0' or '.'))
        {
            return value.ToString("G2", CultureInfo.InvariantCulture);
        }

        return text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text;
    }
}
