using System.Buffers;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A number with or without a unit, brought to the unit that is wanted.</summary>
internal static class ParseQuantity
{
    private static readonly SearchValues<char> InNumbers = SearchValues.Create("0123456789.,+-\u2212");

    public static (double Number, bool UnitGiven)? Parse(string name, Unit wanted, string text, string? unit, Place place, List<Mistake> mistakes)
    {
        var (number, behind) = Split(text.Trim());
        var beside = string.IsNullOrWhiteSpace(unit) ? "" : unit.Trim();
        if (behind.Length > 0 && beside.Length > 0 && !behind.Equals(beside, StringComparison.Ordinal))
        {
            mistakes.Add(new Mistake(place, $"{name} has two units, '{behind}' and '{beside}'", "give one"));
            return null;
        }

        var value = Typed.Number(number, place, out var mistake);
        if (value is null || !double.IsFinite(value.Value))
        {
            mistakes.Add(mistake is null
                ? new Mistake(place, $"{name}: '{number}' is not a number", "accepted: digits with a decimal point")
                : mistake with { Wrong = $"{name}: {mistake.Wrong}" });
            return null;
        }

        var given = behind.Length > 0 ? behind : beside;
        return given.Length == 0 ? (value.Value, false) : Convert(name, value.Value, given, wanted, place, mistakes);
    }

    private static (double Number, bool UnitGiven)? Convert(string name, double value, string given, Unit wanted, Place place, List<Mistake> mistakes)
    {
        if (Units.Find(given) is { } unit && Units.CanConvert(unit, wanted))
        {
            return (Units.Convert(value, unit, wanted), true);
        }

        mistakes.Add(new Mistake(place, $"{name}: {WhatIsWrong(given, wanted)}", "accepted: " + Units.AcceptedFor(wanted)));
        return null;
    }

    private static string WhatIsWrong(string given, Unit wanted)
    {
        var basisLess = Units.All.Any(u => Units.CanConvert(u, wanted) && u.Name.StartsWith(given + " ", StringComparison.OrdinalIgnoreCase));
        return basisLess ? $"'{given}' does not say its basis"
            : Units.Find(given) is null ? $"unit '{given}' is unknown"
            : $"'{given}' cannot be turned into {wanted}";
    }

    /// <summary>The number ends at the first blank, or where its unit begins.</summary>
    private static (string Number, string Unit) Split(string text)
    {
        var end = text.AsSpan().IndexOf(' ');
        if (end < 0)
        {
            end = text.AsSpan().IndexOfAnyExcept(InNumbers);
            end = end <= 0 || char.IsPunctuation(text[end]) && text[end] != '%' ? text.Length : end;
        }

        return (text[..end], text[end..].Trim());
    }
}
