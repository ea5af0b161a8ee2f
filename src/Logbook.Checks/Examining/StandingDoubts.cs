using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>
/// Doubts that go on though the verdict is of something else, or there is none: the error that was named still explains what was
/// compared since, or nothing has compared its reading. A newer value of the point takes none of them away by itself; but one that
/// lies clearly elsewhere is another reading, of which the doubt never was.
/// </summary>
internal static class StandingDoubts
{
    /// <param name="trail">With the entry last; null when it took no part.</param>
    /// <param name="found">What else is said of the entry.</param>
    public static IEnumerable<Finding> Of(Day day, Sheet sheet, Trail? trail, IReadOnlyList<Finding> found) =>
        from reading in sheet.Readings
        where reading.Value is not null
        from open in day.State.Findings.GetValueOrDefault(reading.Point, [])
        where open.Finding.Level >= Level.Watch && IsOf(open.Finding, reading.Point) && !found.Any(f => IsOf(f, reading.Point)) && !IsTrue(day, reading.Point, found)
        let why = Compared(trail, open) ? (Stays(trail, reading.Point) ? "it would still explain what is compared" : null)
            : LiesElsewhere(day, reading) ? null : "nothing has compared it since"
        where why is not null
        select StandsAgain(day, open, why);

    private static bool IsOf(Finding finding, string point) =>
        finding.Code.StartsWith(DoubtFindings.Prefix, StringComparison.Ordinal) && point.Equals(finding.Point, StringComparison.OrdinalIgnoreCase);

    /// <summary>In this entry or in one since: a sample that comes later is held against the readings before it.</summary>
    private static bool Compared(Trail? trail, OpenFinding open) =>
        trail?.Line.PlaceOf(open.Finding.Point!) is { } place && trail.Last.Any(e => !open.IsOf(e.Frame.Sheet.Seq) && e.Frame.Sheet.Seq > open.Seq && e.Compared(place, open.At));

    /// <summary>Further from the value before than twice the uncertainty of a difference.</summary>
    private static bool LiesElsewhere(Day day, Reading reading) =>
        day.Site.FindPoint(reading.Point) is { } point && day.State.Latest.GetValueOrDefault(reading.Point) is { Value: { } before }
        && Math.Abs(reading.Value!.Value - before) > 2 * Math.Sqrt(2) * (point.U?.Of(before) ?? point.Resolution ?? Math.Pow(10, -point.Decimals));

    /// <summary>What is urgent counts as true, and so does what it was computed from.</summary>
    private static bool IsTrue(Day day, string point, IReadOnlyList<Finding> found) => found.Any(f =>
        f is { Level: Level.Urgent, Point: { } tag } && (point.Equals(tag, StringComparison.OrdinalIgnoreCase) || day.Graph.Behind(tag).Contains(point)));

    private static bool Stays(Trail? trail, string point) => trail?.Line.PlaceOf(point) is { } place && trail.Last[^1].Result.Staying.Contains(place);

    private static Finding StandsAgain(Day day, OpenFinding open, string why)
    {
        var told = open.Finding;
        var first = told.Of is null ? $"{told.Text} Said {Words.Time(Calendar.ToSite(day.Site, open.At))} (record {open.Seq})" : told.Text[..told.Text.LastIndexOf(": ", StringComparison.Ordinal)];
        return told with { Text = $"{first}: {why}.", Again = true, Of = told.Of ?? open.Corrects ?? open.Seq };
    }
}
