using System.Globalization;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>
/// Which readings a calculation took from before: after a change, the flow of now beside the lime of an hour ago tells of a dose that
/// never was. What a laboratory gives once in a shift is older always, and is not named.
/// </summary>
internal static class OlderInputs
{
    // A round is typed within minutes; what is read each few hours may be of another state of the line. Judgement, no source.
    private static readonly TimeSpan Apart = TimeSpan.FromMinutes(20);
    private static readonly TimeSpan ReadOften = TimeSpan.FromHours(6);

    /// <returns><c>; with LM-F1 of 13:02</c>; empty when all is of the entry or near it.</returns>
    public static string Words(Day day, LinkedCalculation calculation, IReadOnlyList<PointReading> readings, DateTimeOffset at)
    {
        var older = calculation.Inputs.Where(i => i.Lag == TimeSpan.Zero && i.Point is { Kind: PointKind.Read, Sample: null } point && point.Stale <= ReadOften && !readings.Any(r => r.Point.Tag == point.Tag && !r.Reading.NotTaken))
            .Select(i => (Tag: i.Point!.Tag, Latest: day.State.Latest.GetValueOrDefault(i.Point.Tag))).Where(i => i.Latest is { Value: not null } && at - i.Latest.At > Apart)
            .DistinctBy(i => i.Tag, StringComparer.Ordinal).OrderBy(i => i.Latest!.At).Select(i => $"{i.Tag} of {Time(i.Latest!.At, at)}").ToList();
        return older.Count == 0 ? "" : $"; with {Checks.Words.And(older)}";
    }

    private static string Time(DateTimeOffset read, DateTimeOffset at) =>
        read.Date == at.ToOffset(read.Offset).Date ? read.ToString("HH:mm", CultureInfo.InvariantCulture) : Checks.Words.Time(read);
}
