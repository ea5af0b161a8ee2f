using System.Globalization;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A look-and-listen point: its digit, or the answer's own words.</summary>
internal static class ParseChoice
{
    public static (double Number, bool UnitGiven)? Parse(Point point, string text, string? unit, Place place, List<Mistake> mistakes)
    {
        var typed = text.Trim();
        var choice = point.Choices.FirstOrDefault(c =>
            c.Digit.ToString(CultureInfo.InvariantCulture).Equals(typed, StringComparison.Ordinal) || c.Text.Equals(typed, StringComparison.OrdinalIgnoreCase));
        var plain = string.IsNullOrWhiteSpace(unit) || unit.Equals(point.Unit.Name, StringComparison.OrdinalIgnoreCase);
        if (choice is null || !plain)
        {
            var wrong = choice is null ? $"{point.Tag}: '{typed}' is none of its answers" : $"{point.Tag} has no unit, '{unit}' was given";
            mistakes.Add(new Mistake(place, wrong, "accepted: " + string.Join(", ", point.Choices.Select(c => $"{c.Digit} {c.Text}"))));
            return null;
        }

        return (choice.Digit, false);
    }
}
