using System.Globalization;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Numbers, times and lists as a person reads them.</summary>
internal static class Words
{
    /// <summary>The value with the point's decimals and unit; a choice by its text.</summary>
    public static string Value(Point point, double value) => point.Choices.Count > 0
        ? point.Choices.FirstOrDefault(c => c.Digit == (int)value)?.Text ?? Number(value)
        : $"{Figures.Fixed(value, point.Decimals, whole: point.Kind == PointKind.Read)} {(point.Unit.Name.Equals("1", StringComparison.Ordinal) ? "" : point.Unit.Name)}".TrimEnd();

    /// <summary>A unit behind a number; nothing for a pure number.</summary>
    public static string Behind(string unit) => unit.Equals("1", StringComparison.Ordinal) ? "" : " " + unit;

    /// <summary>A number with no more digits than it needs, six at most.</summary>
    public static string Number(double value) => value.ToString("G6", CultureInfo.InvariantCulture);

    /// <summary>A difference of two values, with one digit more where the point's decimals would hide it.</summary>
    public static string Difference(Point point, double difference)
    {
        var decimals = point.Decimals;
        while (decimals < point.Decimals + 4 && difference != 0 && Math.Abs(difference) < 0.95 * Math.Pow(10, -decimals))
        {
            decimals++;
        }

        var unit = point.Unit.Name switch { "degC" => "K", "%" => "points", "1" => "", var name => name };
        return $"{difference.ToString("F" + decimals, CultureInfo.InvariantCulture)} {unit}".TrimEnd();
    }

    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    public static string Span(TimeSpan span) => span.TotalHours >= 1
        ? Number(Math.Round(span.TotalHours, 1)) + " h"
        : Number(Math.Round(span.TotalMinutes)) + " min";

    /// <summary><c>an isolation</c>, <c>a permit</c>.</summary>
    public static string A(string noun) => (noun.Length > 0 && "aeiou".Contains(noun[0], StringComparison.OrdinalIgnoreCase) ? "an " : "a ") + noun;

    public static string And(IReadOnlyList<string> items) => Join(items, "and");

    public static string Or(IReadOnlyList<string> items) => Join(items, "or");

    private static string Join(IReadOnlyList<string> items, string last) => items.Count < 2
        ? string.Concat(items)
        : string.Join(", ", items.Take(items.Count - 1)) + $" {last} " + items[^1];
}
