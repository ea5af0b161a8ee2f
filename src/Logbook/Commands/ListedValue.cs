using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>A value of a point as it is listed: beside what counts now, what was typed first, and who put it right.</summary>
/// <param name="First">As the entry had it; null when it stands as it was typed.</param>
/// <param name="Right">The record that put it right; null when none did.</param>
internal sealed record ListedValue(Site Site, Point Point, SeriesValue Value, SeriesValue? First, JournalRecord? Right)
{
    public static ListedValue Of(Desk desk, Point point, SeriesValue value)
    {
        if (value.CorrectedBy is not { } seq || desk.Store.Read(value.Seq).First() is not { Body: Entry entry } record)
        {
            return new ListedValue(desk.Site, point, value, null, null);
        }

        var typed = EntryValues.Of(record, entry).Where(v => v.Point.Equals(value.Point, StringComparison.OrdinalIgnoreCase)).ToList();
        return new ListedValue(desk.Site, point, value, typed.FindLast(v => v.At == value.At) ?? typed.MaxBy(v => v.At), desk.Store.Read(seq).First());
    }

    /// <summary>A named state in words; null for a number.</summary>
    public string? Words => Value.Value is { } value && Point.Choices.Count > 0 ? Say.Value(Point, value, Value.Unit) : null;

    /// <summary>What it was first, and by whom and when it was put right: it is not what the one typed who made the entry. A result that came out the same was not.</summary>
    public string? PutRight => Right is null || (Point.Kind == PointKind.Derived && First?.Value == Value.Value) ? null
        : $"first {Said(First)}; {(Point.Kind == PointKind.Derived ? "computed anew, a reading put right" : Value.Value is null ? "taken back" : "put right")} by {Say.Person(Site, Right.By)} {Say.Day(Site, Right.At)}";

    private string Said(SeriesValue? value) => value is null ? "not there" : value.Value is { } number ? Say.Value(Point, number, value.Unit) : "not taken";
}
