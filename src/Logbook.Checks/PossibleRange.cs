using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>What is physically possible at a point: beyond it a reading stands only with a reason.</summary>
internal static class PossibleRange
{
    public static Mistake? Mistake(Day day, PointReading judged, Place place)
    {
        if (Outside(judged) is not { } value)
        {
            return null;
        }

        var point = judged.Point;
        var slip = UnitSlip.Find(day, judged) is { } found ? "; " + found.Text : "";
        return new Mistake(place, $"{point.Tag}: {Words.Value(point, value)} is not possible{slip}", $"accepted: {Range(point)}, or any value with a reason in words why it stands");
    }

    public static IEnumerable<Finding> Findings(PointReading judged)
    {
        if (Outside(judged) is { } value)
        {
            var point = judged.Point;
            yield return new Finding(Level.Watch, "range.outside", point.Tag,
                $"{point.Description} {Words.Value(point, value)} is beyond what is possible ({Range(point)}); kept because: {judged.Reading.Why}", []);
        }
    }

    private static double? Outside(PointReading judged) =>
        judged.Number is { } value && (value < judged.Point.Lowest || value > judged.Point.Highest) ? value : null;

    private static string Range(Point point) => (point.Lowest, point.Highest) switch
    {
        ({ } low, { } high) => $"{Words.Number(low)} to {Words.Number(high)} {point.Unit}",
        ({ } low, null) => $"{Words.Number(low)} {point.Unit} or more",
        (_, { } high) => $"{Words.Number(high)} {point.Unit} or less",
        _ => "any value",
    };
}
