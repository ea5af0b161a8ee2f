namespace Logbook.Journal;

/// <summary>
/// One point's history out of records. Every store finds the records in its own way and leaves the reading of them to this.
/// </summary>
/// <param name="point">Tag; compared without regard to case.</param>
public sealed class PointSeries(string point)
{
    private readonly Dictionary<long, (JournalRecord Record, Entry Entry)> _entries = [];
    private readonly Dictionary<long, List<SeriesValue>> _values = [];

    /// <summary>The values with a time in [from, to), by time and then sequence.</summary>
    /// <param name="records">By sequence: at least every entry and correction with a time in that range, and all that concern the same entries.</param>
    public static IReadOnlyList<SeriesValue> Of(string point, IEnumerable<JournalRecord> records, DateTimeOffset from, DateTimeOffset to)
    {
        var series = new PointSeries(point);
        foreach (var record in records)
            series.Add(record);
        return series.Between(from, to);
    }

    private IReadOnlyList<SeriesValue> Between(DateTimeOffset from, DateTimeOffset to) =>
        [.. _values.Values.SelectMany(v => v).Where(v => v.At >= from && v.At < to).OrderBy(v => v.At).ThenBy(v => v.Seq)];

    private void Add(JournalRecord record)
    {
        if (record.Body is Entry entry)
            AddEntry(record, entry);
        else if (record.Body is Correction correction && _entries.TryGetValue(correction.Target, out var target))
            AddCorrection(record, correction, target.Record, target.Entry);
    }

    private void AddEntry(JournalRecord record, Entry entry)
    {
        _entries[record.Seq] = (record, entry);
        _values[record.Seq] = [.. EntryValues.Of(record, entry).Where(value => Is(value.Point))];
    }

    private void AddCorrection(JournalRecord correctedBy, Correction correction, JournalRecord target, Entry entry)
    {
        var values = _values[target.Seq];
        if (Is(correction.Reading.Point))
        {
            var old = Meant(values, correction.Reading.At);
            var read = old ?? EntryValues.Read(target, entry.Round, correction.Reading);
            if (old is not null)
                values.Remove(old);
            values.Add(read.PutRight(correction.Reading, correctedBy.Seq));
        }

        PutResultsRight(values, correctedBy, correction, target, entry);
    }

    private static SeriesValue? Meant(List<SeriesValue> values, DateTimeOffset at) =>
        values.LastOrDefault(value => value.At == at) ?? values.MaxBy(value => value.At);

    private void PutResultsRight(List<SeriesValue> values, JournalRecord correctedBy, Correction correction, JournalRecord target, Entry entry)
    {
        if (!entry.Results.Concat(correction.Results).Any(result => result.Point is not null && Is(result.Point)))
            return;
        values.Clear();
        values.AddRange(
            from result in correction.Results
            where result.Point is not null && Is(result.Point)
            select EntryValues.Derived(target, entry.Round, result) with { CorrectedBy = correctedBy.Seq });
    }

    private bool Is(string tag) => tag.Equals(point, StringComparison.OrdinalIgnoreCase);
}
