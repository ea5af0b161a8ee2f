using System.Globalization;
using Logbook.Contracts;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>What a plug-in says of an output, read into units and numbers.</summary>
public static class PlugInOutput
{
    /// <param name="use">The calculation's id, for a mistake of the plug-in's.</param>
    /// <param name="methodU">The site's own, in place of the plug-in's.</param>
    internal static LinkedOutput? Link(string use, OutputInfo info, Point? point, Uncertainty? methodU, Place place, List<Mistake> mistakes)
    {
        if (Units.Find(info.Unit) is not { } unit)
        {
            mistakes.Add(new Mistake(place, $"{use}: the plug-in's output '{info.Id}' has the unknown unit '{info.Unit}'"));
            return null;
        }

        if (methodU is null && info.MethodU is { } text && (methodU = MethodU(text)) is null)
        {
            mistakes.Add(new Mistake(place, $"{use}: the plug-in's output '{info.Id}' has the method uncertainty '{text}'", "a number, or a number with %"));
            return null;
        }

        return new LinkedOutput(info, unit, point, methodU);
    }

    /// <summary><c>1.0</c> in the output's unit, or <c>3%</c> of the value; null when it is neither.</summary>
    public static Uncertainty? MethodU(string text)
    {
        var share = text.EndsWith('%');
        return double.TryParse(share ? text[..^1] : text, NumberStyles.Float, CultureInfo.InvariantCulture, out var amount) && amount >= 0
            ? new Uncertainty(share ? amount / 100 : amount, share)
            : null;
    }
}
