namespace Logbook.Journal;

/// <summary>
/// One point's history out of records, added in any order. Every store finds the records in its own way and leaves the reading
/// of them to this. It needs every entry and correction with a time in the range that is asked for, and all corrections of
/// those entries.
/// </summary>
/// <param name="point">Tag; compared without regard to case.</param>
public sealed class PointSeries(string point)
{
    private readonly Dictionary<long, PointInEntry> _entries = [];
    private readonly SortedDictionary<long, Correction> _corrections = [];

    /// <summary>The values in [from, to) out of a journal that is at hand as a whole.</summary>
    public static IReadOnlyList<SeriesValue> Of(string point, IEnumerable<JournalRecord> records, DateTimeOffset from, DateTimeOffset to)
    {
        var series = new PointSeries(point);
        foreach (var record in records)
            series.Add(record);
        return series.Between(from, to);
    }

    /// <summary>Takes what the record says of the point; one that was added before changes nothing.</summary>
    public void Add(JournalRecord record)
    {
        if (record.Body is Entry entry)
            _entries[record.Seq] = PointInEntry.Of(point, Origin.Of(record, entry), entry);
        else if (record.Body is Correction correction)
            _corrections[record.Seq] = correction;
    }

    /// <summary>Sequence numbers of the entries added so far.</summary>
    public IReadOnlyCollection<long> Entries => _entries.Keys;

    /// <summary>Takes what an entry said of the point, out of something that was kept.</summary>
    public void Add(PointInEntry entry) => _entries[entry.Origin.Seq] = entry;

    /// <summary>Entries that a correction names and that were not added yet.</summary>
    public IReadOnlyList<long> Missing => [.. _corrections.Values.Select(c => c.Target).Where(seq => !_entries.ContainsKey(seq)).Distinct()];

    /// <summary>The values with a time in [from, to), by time and then sequence.</summary>
    public IReadOnlyList<SeriesValue> Between(DateTimeOffset from, DateTimeOffset to)
    {
        foreach (var (seq, correction) in _corrections)
        {
            if (_entries.TryGetValue(correction.Target, out var entry))
                _entries[correction.Target] = entry.Correct(point, correction, seq);
        }

        return
        [
            .. _entries.Values.SelectMany(entry => entry.Read.Concat(entry.Derived))
                .Where(value => value.At >= from && value.At < to)
                .OrderBy(value => value.At).ThenBy(value => value.Seq),
        ];
    }
}

/// <summary>One point in one entry, as it stands after the corrections so far.</summary>
public sealed record PointInEntry(Origin Origin, IReadOnlyList<SeriesValue> Read, IReadOnlyList<SeriesValue> Derived)
{
    /// <summary>Every point of an entry, before any correction.</summary>
    public static IEnumerable<(string Point, PointInEntry Values)> All(JournalRecord record, Entry entry) =>
        EntryValues.Of(record, entry).Select(value => value.Point).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(point => (point, Of(point, Origin.Of(record, entry), entry)));

    internal static PointInEntry Of(string point, Origin origin, Entry entry) => new(
        origin,
        [.. entry.Readings.Where(reading => Same(reading.Point, point)).Select(origin.Read)],
        DerivedIn(entry.Results, point, origin));

    internal PointInEntry Correct(string point, Correction correction, long seq) => this with
    {
        Read = correction.Of(point) is { } reading ? PutRight(reading, seq) : Read,
        Derived = [.. DerivedIn(correction.Results, point, Origin).Select(value => value with { CorrectedBy = seq })],
    };

    private IReadOnlyList<SeriesValue> PutRight(Reading reading, long seq)
    {
        var meant = Read.LastOrDefault(value => value.At == reading.At) ?? Read.MaxBy(value => value.At);
        return [.. Read.Where(value => value != meant), Origin.Read(reading) with { CorrectedBy = seq }];
    }

    private static IReadOnlyList<SeriesValue> DerivedIn(IReadOnlyList<Result> results, string point, Origin origin) =>
        [.. results.Where(result => result.Point is not null && Same(result.Point, point)).Select(origin.Derived)];

    private static bool Same(string tag, string point) => tag.Equals(point, StringComparison.OrdinalIgnoreCase);
}
