using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A number with or without a unit, brought to the unit that is wanted.</summary>
internal static class ParseQuantity
{
    /// <param name="name">What it is for: a tag or a role.</param>
    /// <param name="beside">A unit that stands in a field of its own; null or empty when there is none.</param>
    public static (double Number, bool UnitGiven)? Parse(string name, Unit wanted, string text, string? beside, Place place, List<Mistake> mistakes)
    {
        if (Typed.Measured(text, place, out var mistake, wanted) is not { } measured)
        {
            mistakes.Add(mistake! with { Wrong = $"{name}: {mistake.Wrong}" });
            return null;
        }

        if (string.IsNullOrWhiteSpace(beside))
        {
            return InWanted(name, measured.Value, measured.Unit, wanted, place, mistakes);
        }

        if (Units.Find(beside) is not { } unit)
        {
            mistake = Units.Unknown(beside, place, wanted);
            mistakes.Add(mistake with { Wrong = $"{name}: {mistake.Wrong}" });
            return null;
        }

        if (measured.Unit is { } behind && behind != unit)
        {
            mistakes.Add(new Mistake(place, $"{name} has two units, {behind} and {unit}", "give one"));
            return null;
        }

        return InWanted(name, measured.Value, unit, wanted, place, mistakes);
    }

    private static (double Number, bool UnitGiven)? InWanted(string name, double value, Unit? unit, Unit wanted, Place place, List<Mistake> mistakes)
    {
        if (unit is null || Units.CanConvert(unit, wanted))
        {
            return (unit is null ? value : Units.Convert(value, unit, wanted), unit is not null);
        }

        var wrong = Units.All.Any(u => Units.CanConvert(u, wanted) && u.Name.StartsWith(unit.Name + " ", StringComparison.Ordinal))
            ? $"{unit} does not say its basis"
            : $"{unit} cannot be turned into {wanted}";
        mistakes.Add(new Mistake(place, $"{name}: {wrong}", "accepted: " + Units.AcceptedFor(wanted)));
        return null;
    }
}
