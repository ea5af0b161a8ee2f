using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>
/// A second reading that lies further from the first than their uncertainties explain, or than the point may change in an hour:
/// which of the two is wrong neither of them tells.
/// </summary>
internal static class ReadTwice
{
    public const string Code = "twice";

    private const string Ask = "; one of the two is a slip, a third reading tells";

    // Further apart the plant itself may have moved between the two. Judgement, no source.
    private static readonly TimeSpan AtOnce = TimeSpan.FromMinutes(30);

    public static IEnumerable<Finding> Findings(Day day, PointReading judged)
    {
        var point = judged.Point;
        if (judged.Number is not { } value || Other(day, judged, value) is not { } twice || Most(judged, twice.First, twice.Second) is not { } most)
        {
            yield break;
        }

        var apart = Math.Abs(twice.Second - twice.First);
        if (apart > most)
        {
            yield return new Finding(Level.Watch, Code, point.Tag,
                $"{point.Tag} read twice, {Figure(judged, twice.First)} and {Words.Value(point, twice.Second)}{twice.Within}: {Words.Difference(point, apart)} apart{Ask}",
                [$"more than {Words.Difference(point, most)} is no chance of two readings"]) { Settles = point.Tag };
        }
    }

    /// <summary>The finding without what it asks for: while the slaker is urgent nobody is sent to read again.</summary>
    public static Finding Silent(Finding finding) => finding.Code == Code ? finding with { Text = finding.Text.Replace(Ask, "", StringComparison.Ordinal), Settles = null } : finding;

    /// <summary>The first and the second: both in one row, or the first in the entry that is read again.</summary>
    private static (double First, double Second, string Within)? Other(Day day, PointReading judged, double value)
    {
        var (point, at) = (judged.Point, judged.Reading.At);
        if (judged.Reading.Second is { } typed)
        {
            return ParseQuantity.Parse(point.Tag, point.Unit, typed, null, Place.Unknown, []) is var (second, _) ? (value, second, "") : null;
        }

        return day.SecondOf is { } seq && day.Series(point, at - AtOnce, at + AtOnce).LastOrDefault(v => v.Seq == seq) is { Value: { } first } before
            ? (first, value, $" within {Math.Max(1, Math.Ceiling((at - before.At).Duration().TotalMinutes)):F0} min")
            : null;
    }

    /// <summary>How far two readings of the same may lie apart; null where the site says nothing of it.</summary>
    private static double? Most(PointReading judged, double first, double second)
    {
        var u = judged.Point.U is { } of ? Math.Max(of.Of(first), of.Of(second)) : 0;
        double? chance = u > 0 ? 3 * Math.Sqrt(2) * u : null;
        return chance is { } known && judged.Point.Step is { } step ? Math.Min(known, step) : chance ?? judged.Point.Step;
    }

    /// <summary>The number alone: its unit stands behind the second.</summary>
    private static string Figure(PointReading judged, double value) => Words.Value(judged.Point, value).Split(' ')[0];
}
