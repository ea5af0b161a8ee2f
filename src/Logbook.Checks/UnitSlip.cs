using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>
/// A value that would fit the last one if it had been meant in another unit, basis or decimal place. A hint, never a change. What
/// comes back to where it lay within the last day is none: a flow that was lost, or the reading after a slip.
/// </summary>
internal static class UnitSlip
{
    private static readonly TimeSpan Lately = TimeSpan.FromHours(24);

    public static IEnumerable<Finding> Findings(Day day, PointReading judged) => Find(day, judged) is { } slip ? [slip] : [];

    public static Finding? Find(Day day, PointReading judged)
    {
        var point = judged.Point;
        if (judged.Number is not { } value || day.LastCompared(point, judged.Reading.At) is not { } last || last.Value is not { } usual)
        {
            return null;
        }

        var near = Near(day, judged, usual);
        if (Math.Abs(value - usual) <= 2 * near)
        {
            return null;
        }

        var fits = Slips(judged, value).FirstOrDefault(s => Math.Abs(s.Meant - usual) <= near);
        return fits.Words is null || day.Compared(point, judged.Reading.At - Lately, judged.Reading.At).Any(v => Math.Abs(v.Value!.Value - value) <= near) ? null : new Finding(Level.Note, "slip." + fits.Code, point.Tag,
            $"{Words.Value(point, value)} would be {Words.Value(point, fits.Meant)} {fits.Words}",
            [$"last {Words.Value(point, usual)} at {Words.Time(last.At)}"]);
    }

    /// <summary>How far from the last value still counts as near: its believable change, else a twentieth of it.</summary>
    private static double Near(Day day, PointReading judged, double usual) =>
        StepCheck.Allowed(day, judged) is { } allowed ? allowed.Most : Math.Abs(usual) / 20;

    private static IEnumerable<(string Code, double Meant, string Words)> Slips(PointReading judged, double value)
    {
        var unit = judged.Point.Unit;
        if (!judged.UnitGiven && Other(unit) is { } other)
        {
            yield return (other.Code, Units.Convert(value, other.Unit, unit), $"if it was read in {other.Unit}");
        }

        yield return ("factor-10", value / 10, "with the decimal point one place to the left");
        yield return ("factor-10", value * 10, "with the decimal point one place to the right");
    }

    /// <summary>The unit of the same dimension that is most easily mistaken for it.</summary>
    private static (string Code, Unit Unit)? Other(Unit unit)
    {
        var (code, name) = unit.Name switch
        {
            "degC" => ("degF", "degF"),
            "degF" => ("degC", "degC"),
            // A strength is titrated and reported in either basis; soda on dry solids is only spoken of as Na2O.
            _ when unit.Dimension == "alkali" && unit.Name.EndsWith(" Na2O", StringComparison.Ordinal) => ("basis", unit.Name[..^5] + " NaOH"),
            _ when unit.Dimension == "alkali" && unit.Name.EndsWith(" NaOH", StringComparison.Ordinal) => ("basis", unit.Name[..^5] + " Na2O"),
            _ => ("", ""),
        };
        return name.Length > 0 && Units.Find(name) is { } other && Units.CanConvert(other, unit) ? (code, other) : null;
    }
}
