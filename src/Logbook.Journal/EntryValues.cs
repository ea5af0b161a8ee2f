namespace Logbook.Journal;

/// <summary>An entry's values, one point each: what was read, then what was derived.</summary>
internal static class EntryValues
{
    public static IEnumerable<SeriesValue> Of(JournalRecord record, Entry entry) =>
        entry.Readings.Select(reading => Read(record, entry.Round, reading))
            .Concat(entry.Results.Where(result => result.Point is not null).Select(result => Derived(record, entry.Round, result)));

    public static SeriesValue Read(JournalRecord record, string? round, Reading reading) =>
        new(reading.Point, reading.At, reading.Value, reading.Typed, reading.Unit, reading.Why, round, record.By, record.Seq, CorrectedBy: null);

    /// <summary>A derived value belongs to the moment of its entry.</summary>
    public static SeriesValue Derived(JournalRecord record, string? round, Result result) =>
        new(result.Point!, record.At, result.Value, Typed: null, result.Unit, Why: null, round, record.By, record.Seq, CorrectedBy: null);

    /// <summary>What stands once a correction says otherwise: when it was read and what; who read it and in which entry stays.</summary>
    public static SeriesValue PutRight(this SeriesValue value, Reading reading, long correction) => value with
    {
        At = reading.At,
        Value = reading.Value,
        Typed = reading.Typed,
        Unit = reading.Unit,
        Why = reading.Why,
        CorrectedBy = correction,
    };

    /// <summary>Order of a point's history.</summary>
    public static bool IsNewerThan(this SeriesValue value, SeriesValue other) =>
        value.At > other.At || (value.At == other.At && value.Seq >= other.Seq);
}
