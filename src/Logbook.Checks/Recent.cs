using Logbook.Journal;

namespace Logbook.Checks;

/// <summary>
/// The values of the last day and a half, read once and then kept as the desk follows the journal, so that judging an entry
/// need not look them up one by one; of the last two weeks once somebody has asked for those. What it does not hold as a
/// whole it does not answer: then the store is asked.
/// </summary>
internal sealed class Recent(IJournalStore store)
{
    private static readonly TimeSpan Near = TimeSpan.FromHours(36);
    private static readonly TimeSpan Far = TimeSpan.FromDays(15);

    private readonly Dictionary<string, List<RecentValue>> _values = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Tags with a value that a correction put right: the store is asked for those again.</summary>
    private readonly HashSet<string> _corrected = new(StringComparer.OrdinalIgnoreCase);

    private TimeSpan _span = Near;
    private (long Head, DateTimeOffset Now) _wanted;
    private DateTimeOffset? _since;
    private DateTimeOffset _newest = DateTimeOffset.MinValue;
    private long _followed;

    /// <summary>Says how far the journal is to be followed. It is read when somebody asks.</summary>
    public Recent UpTo(long head, DateTimeOffset now)
    {
        _wanted = (head, now);
        return this;
    }

    /// <summary>Takes a record that was just written, so that it need not be read back.</summary>
    public void Appended(JournalRecord record)
    {
        if (_since is not null && record.Seq == _followed + 1)
        {
            Take(record);
            _followed = record.Seq;
        }
    }

    /// <summary>The values read in [<paramref name="from"/>, <paramref name="to"/>], oldest first; null when the store must be asked.</summary>
    public IReadOnlyList<SeriesValue>? Between(string tag, DateTimeOffset from, DateTimeOffset to)
    {
        CatchUp();
        if (!Holds(from) && from >= _wanted.Now - Far && _span < Far)
        {
            _span = Far;
            _since = null;
            CatchUp();
        }

        if (!Holds(from))
        {
            return null;
        }

        if (_corrected.Remove(tag))
        {
            _values[tag] = [.. store.Series(tag, Oldest, DateTimeOffset.MaxValue, _followed).Where(v => v.Value is not null).Select(v => new RecentValue(v, []))];
        }

        return _values.TryGetValue(tag, out var values)
            ? [.. values.Select(v => v.Value).Where(v => v.At >= from && v.At <= to)]
            : [];
    }

    /// <summary>The result that a derived value was; null when it is not held.</summary>
    public Result? ResultOf(SeriesValue value) =>
        _values.TryGetValue(value.Point, out var values) ? values.FindLast(v => v.Value.Seq == value.Seq && v.Value.At == value.At)?.Result : null;

    private bool Holds(DateTimeOffset from) => from >= Oldest;

    private DateTimeOffset Oldest => _newest == DateTimeOffset.MinValue || _newest - _span < _since ? _since!.Value : _newest - _span;

    private void CatchUp()
    {
        if (_since is null)
        {
            // An entry is as late as its last reading: none before the span holds a value of it.
            _values.Clear();
            _corrected.Clear();
            _since = _wanted.Now - _span;
            Follow(store.Between(_since.Value, _wanted.Now.AddDays(1)).OrderBy(r => r.Seq));
            _followed = _wanted.Head;
        }
        else if (_followed < _wanted.Head)
        {
            Follow(store.Read(_followed + 1));
            _followed = _wanted.Head;
        }
    }

    private void Follow(IEnumerable<JournalRecord> records)
    {
        foreach (var record in records.TakeWhile(r => r.Seq <= _wanted.Head))
        {
            Take(record);
        }
    }

    private void Take(JournalRecord record)
    {
        if (record.Body is Entry entry)
        {
            foreach (var value in EntryValues.Of(record, entry).Where(v => v.Value is not null))
            {
                Add(new RecentValue(value, entry.Results));
            }
        }
        else if (record.Body is Correction correction)
        {
            PutRight(correction);
        }
    }

    private void PutRight(Correction correction)
    {
        // What the entry gave and the correction gives no more has changed too.
        var gave = _values.Where(v => v.Value.Exists(value => value.Value.Seq == correction.Target)).Select(v => v.Key);
        _corrected.UnionWith([.. correction.Results.Select(r => r.Point).OfType<string>(), .. correction.Readings.Select(r => r.Point), .. gave]);
    }

    private void Add(RecentValue added)
    {
        var (tag, at) = (added.Value.Point, added.Value.At);
        _newest = Later(_newest, at);
        if (at < _newest - _span)
        {
            return;
        }

        if (!_values.TryGetValue(tag, out var values))
        {
            _values[tag] = values = [];
        }

        var place = values.FindLastIndex(v => v.Value.At <= at) + 1; // nearly always the end
        values.Insert(place, added);
        values.RemoveRange(0, Math.Max(0, values.FindIndex(v => v.Value.At >= _newest - _span)));
    }

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private sealed class RecentValue(SeriesValue value, IReadOnlyList<Result> results)
    {
        public SeriesValue Value => value;

        public Result? Result => results.FirstOrDefault(r => value.Point.Equals(r.Point, StringComparison.OrdinalIgnoreCase));
    }
}
