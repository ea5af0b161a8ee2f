using Logbook.Contracts;
using Logbook.Plant;
using Logbook.Plant.Reading;

namespace Logbook.Checks;

/// <summary>What a plug-in says of an output, read into units and numbers.</summary>
internal static class PlugInOutput
{
    /// <param name="use">The calculation's id, for a mistake of the plug-in's.</param>
    /// <param name="methodU">The site's own, in place of the plug-in's.</param>
    /// <param name="estimates">The site's own, in place of the plug-in's.</param>
    public static LinkedOutput? Link(string use, OutputInfo info, Point? point, Uncertainty? methodU, string? estimates, Place place, List<Mistake> mistakes)
    {
        if (Units.Find(info.Unit) is not { } unit)
        {
            mistakes.Add(new Mistake(place, $"{use}: the plug-in's output '{info.Id}' has the unknown unit '{info.Unit}'"));
            return null;
        }

        if (methodU is null && info.MethodU is { } text)
        {
            methodU = Uncertainties.Parse(text, place, out var mistake);
            if (mistake is not null)
            {
                mistakes.Add(mistake with { Wrong = $"{use}: the plug-in's output '{info.Id}': {mistake.Wrong}" });
                return null;
            }
        }

        return new LinkedOutput(info, unit, point, methodU, estimates ?? info.Estimates);
    }
}
