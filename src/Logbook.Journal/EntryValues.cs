namespace Logbook.Journal;

/// <summary>Where a value stands: its entry, and when and by whom that was made.</summary>
public sealed record Origin(long Seq, DateTimeOffset At, string By, string? Round)
{
    internal static Origin Of(JournalRecord record, Entry entry) => new(record.Seq, record.At, record.By, entry.Round);

    internal SeriesValue Read(Reading reading) =>
        new(reading.Point, reading.At, reading.Value, reading.Typed, reading.Unit, reading.Why, Round, By, Seq, CorrectedBy: null);

    /// <summary>A derived value belongs to the moment of its entry.</summary>
    internal SeriesValue Derived(Result result) =>
        new(result.Point!, At, result.Value, Typed: null, result.Unit, Why: null, Round, By, Seq, CorrectedBy: null);
}

/// <summary>What an entry says of its points: what was read, then what was derived.</summary>
public static class EntryValues
{
    public static IEnumerable<SeriesValue> Of(JournalRecord record, Entry entry)
    {
        var origin = Origin.Of(record, entry);
        return entry.Readings.Select(origin.Read).Concat(entry.Results.Where(result => result.Point is not null).Select(origin.Derived));
    }

    /// <summary>Order of a point's history.</summary>
    public static bool IsNewerThan(this SeriesValue value, SeriesValue other) =>
        value.At > other.At || (value.At == other.At && value.Seq >= other.Seq);
}
