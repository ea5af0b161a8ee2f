namespace Logbook.Plant.Reading;

/// <summary>A standard uncertainty as site files, plug-ins and the command line write it.</summary>
public static class Uncertainties
{
    /// <summary><c>0.3</c> in the unit of what it belongs to, or <c>2%</c> of the value.</summary>
    public static Uncertainty? Parse(string text, Place place, out Mistake? mistake)
    {
        var isShare = text.TrimEnd().EndsWith('%');
        var amount = Typed.Number(isShare ? text.TrimEnd().TrimEnd('%') : text, place, out mistake);
        if (mistake is not null || amount <= 0)
        {
            mistake = new Mistake(place, $"u '{text}' cannot be read", "a number above 0 in the unit, or a share as in 2%");
            return null;
        }

        return new Uncertainty(isShare ? amount!.Value / 100 : amount!.Value, isShare);
    }

    /// <summary>The same under a key of site.toml, where it may also be a number.</summary>
    internal static Uncertainty? Of(Fields table, string key)
    {
        if (table.Raw(key) is string text)
        {
            return table.Keep(Parse(text, table.PlaceOf(key), out var mistake), mistake);
        }

        var number = table.Number(key);
        if (number <= 0)
        {
            table.Wrong(key, $"{key} is not above 0", "a number above 0 in the unit, or a share as in \"2%\"");
        }

        return number > 0 ? new Uncertainty(number.Value, false) : null;
    }
}
