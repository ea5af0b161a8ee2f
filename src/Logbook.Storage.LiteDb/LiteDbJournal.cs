using Logbook.Journal;
using Logbook.Storage.LiteDb.Disk;
using Logbook.Storage.LiteDb.Values;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// A line's journal on one local disk. Several terminals, processes and users may hold it open at once: writing is owned for a
/// burst of saves at a time, reading is a short look at a consistent moment. Opening it does nothing to the disk. Long reads go
/// in batches: records are only ever added, so what comes out is the journal as it was at the last batch.
/// </summary>
public sealed class LiteDbJournal : IJournalStore
{
    /// <summary>How long a save waits for another writer unless said otherwise.</summary>
    public static readonly TimeSpan UsualWait = TimeSpan.FromSeconds(5);

    // Most reads want one record or the few new ones.
    private const int FirstBatch = 16;
    private const int BatchSize = 512;
    private const int Part = 64;

    // Up to here reading the records themselves takes a moment; beyond, it is what is kept of them that is read.
    private static readonly TimeSpan LongSeries = TimeSpan.FromDays(10);

    private readonly JournalFolder _folder;
    private readonly Access _access;
    private readonly KeptStates _states;
    private readonly KeptValues _values;
    private readonly ParsedRecords _parsed = new();

    /// <param name="siteFolder">The site's folder; the journal is its <c>journal/</c>, made at the first save.</param>
    /// <param name="terminal">host:tty, for those who have to wait for this one.</param>
    /// <param name="clock">When a burst of saves is over.</param>
    /// <param name="wait">How long a save waits for another writer.</param>
    public LiteDbJournal(string siteFolder, string terminal, TimeProvider clock, TimeSpan? wait = null)
        : this(JournalFolder.Of(siteFolder), terminal, clock, wait ?? UsualWait)
    {
    }

    /// <summary>Reads what lies in a folder that has the files of a journal.</summary>
    internal LiteDbJournal(JournalFolder folder)
        : this(folder, "", TimeProvider.System, TimeSpan.Zero)
    {
    }

    internal LiteDbJournal(JournalFolder folder, string terminal, TimeProvider clock, TimeSpan wait)
    {
        _folder = folder;
        _access = new Access(folder, terminal, clock, wait);
        _states = new KeptStates(folder.States);
        _values = new KeptValues(folder.Values);
    }

    /// <summary>True when this path lies in a folder that a journal is kept in: nobody else writes there.</summary>
    public static bool Holds(string path) => JournalFolder.IsAbove(new FileInfo(path).Directory);

    public Head Head => Look(records => records.Last() is { } last ? Head.Of(_parsed.Of(last)) : Head.Empty, Head.Empty);

    /// <summary>What could not be done after the last save, in words: the save itself is safe. Null when all went well.</summary>
    public string? Warning => _access.Warning;

    public JournalRecord Append(RecordDraft draft) => _access.Append(draft);

    public IEnumerable<JournalRecord> Read(long fromSeq = 1)
    {
        Head? head = fromSeq <= 1 ? Head.Empty : null;
        foreach (var stored in Batches(Math.Max(1, fromSeq), _access.Look))
        {
            var record = _parsed.Of(stored);
            if (head is not null && Chain.WhyNot(record, head) is { } why)
                throw new JournalException(JournalTrouble.Damaged, why);
            head = Head.Of(record);
            yield return record;
        }
    }

    public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1)
    {
        foreach (var stored in Batches(Math.Max(1, fromSeq), _access.Look))
            yield return stored.Bytes;
    }

    public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to)
    {
        var wanted = Look(records => records.SeqsSpeaking(from, to), []);
        Task<List<JournalRecord>>[] parsing = [];
        while (wanted.Count > 0 || parsing.Length > 0)
        {
            // While one batch is read as text the next comes from the disk.
            var next = wanted.Count > 0 ? Parsing(Taken(wanted)) : [];
            foreach (var record in parsing.SelectMany(part => part.GetAwaiter().GetResult()).Where(r => r.At >= from && r.At < to))
                yield return record;
            parsing = next;
        }
    }

    public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to, long upTo = long.MaxValue) =>
        to - from > LongSeries && Head.Seq is >= KeptValues.Size and var end
            ? OverYears(point, from, to, Math.Min(upTo, end))
            : Look(records => new PointSearch(records, _parsed, point, upTo).Between(from, to), []);

    public IEnumerable<JournalRecord> Corrections(long first, long last) =>
        Look<List<Stored>>(records => [.. records.Correcting(first, last).OrderBy(stored => stored.Seq)], []).Select(_parsed.Of);

    public State Snapshot(long upTo = long.MaxValue) =>
        _states.Newest(upTo, head => Look(records => records.Find(head.Seq) is { } there && JournalRecord.HashOf(there.Bytes) == head.Hash, whenEmpty: false));

    public void Keep(State state)
    {
        _states.Keep(state);
        _values.KeepUpTo(state.Head.Seq, Some);
    }

    public ChainCheck Verify(LongWork? work = null) => Verify(work ?? LongWork.Unwatched, _ => { });

    /// <summary>As <see cref="Verify(LongWork?)"/>, and hands over each record that is sound on the way.</summary>
    public ChainCheck Verify(LongWork work, Action<JournalRecord> sound)
    {
        JournalException? trouble = null;
        Stored? current = null;
        var replay = State.Empty;
        var block = new List<JournalRecord>();
        var check = Chain.Verify(Sound(), Anchor(), record =>
        {
            work.Reached(record.Seq);
            sound(record);
            return RecordTable.WhyNot(current!, record) ?? _states.WhyNot(replay = replay.Apply(record)) ?? WhyNotKept(block, record);
        });
        return trouble is not null ? check with { FirstBad = check.FirstBad ?? check.Records + 1, Why = trouble.Message }
            : check.Ok ? WithIndex(check) : check;

        IEnumerable<ReadOnlyMemory<byte>> Sound()
        {
            using var all = Batches(1, _access.LookAtDisk).GetEnumerator();
            while (Next(all, out trouble))
            {
                current = all.Current;
                yield return current.Bytes;
            }
        }
    }

    /// <summary>Copies the journal as it is now into another site's folder, while others may write here.</summary>
    /// <returns>What was copied; when it was not sound, nothing was made there.</returns>
    public ChainCheck CopyTo(string siteFolder, string terminal, TimeSpan wait, LongWork work) =>
        JournalCopy.Make(Bytes(), Anchor(), siteFolder, terminal, wait, work);

    public void Dispose() => _access.Dispose();

    private IReadOnlyList<SeriesValue> OverYears(string point, DateTimeOffset from, DateTimeOffset to, long upTo)
    {
        var kept = _values.Blocks(upTo, Some).SelectMany(block => block.Of(point, from, to)).ToList();
        var next = upTo - (upTo % KeptValues.Size) + 1;
        return Look(records => new PointSearch(records, _parsed, point, upTo).Between(from, to, kept, next, KeptValues.Size), []);
    }

    private IReadOnlyList<JournalRecord> Some(long first, int count) => [.. Read(first).Take(count)];

    private string? WhyNotKept(List<JournalRecord> block, JournalRecord record)
    {
        block.Add(record);
        if (block.Count < KeptValues.Size)
            return null;
        var why = _values.WhyNot(block);
        block.Clear();
        return why;
    }

    private List<Stored> Taken(SortedSet<long> wanted)
    {
        var (first, count) = (wanted.Min, (int)Math.Min(BatchSize, wanted.Max - wanted.Min + 1));
        var batch = Look(records => records.From(first, count).ToList(), []);
        return batch.Count > 0
            ? batch.FindAll(stored => wanted.Remove(stored.Seq))
            : throw new JournalException(JournalTrouble.Damaged, $"record {first} is in the index by time, but not there");
    }

    // Years of records are mostly the reading of their text: on all cores, each part as its turn comes.
    private Task<List<JournalRecord>>[] Parsing(List<Stored> batch) => batch.Count <= Part
        ? [Task.FromResult(batch.ConvertAll(_parsed.Of))]
        : [.. batch.Chunk(Part).Select(part => Task.Run(() => part.Select(_parsed.Of).ToList()))];

    private static bool Next(IEnumerator<Stored> all, out JournalException? trouble)
    {
        trouble = null;
        try
        {
            return all.MoveNext();
        }
        catch (JournalException damaged) when (damaged.Trouble == JournalTrouble.Damaged)
        {
            trouble = damaged;
            return false;
        }
    }

    /// <summary>The end that was last noted beside the journal; null when none was.</summary>
    public Head? Anchor() => StoreFault.Guard("the noted end cannot be read", _folder.ReadAnchor);

    // A record that the index by time does not know would be missing from every list that goes by time.
    private ChainCheck WithIndex(ChainCheck check)
    {
        var found = _access.LookAtDisk(view => view.Records.SeqsSpeaking(DateTimeOffset.MinValue, DateTimeOffset.MaxValue), []);
        for (var seq = 1L; seq <= check.Records; seq++)
        {
            if (!found.Contains(seq))
                return check with { FirstBad = seq, Why = $"record {seq} is sound, but missing from the index by time" };
        }

        return check;
    }

    private static IEnumerable<Stored> Batches(long next, Looking<JournalException?> looking)
    {
        for (var size = FirstBatch; ; size = BatchSize)
        {
            var batch = new List<Stored>();
            var trouble = Fill(batch, next, size, looking);
            foreach (var stored in batch)
                yield return stored;
            if (trouble is not null)
                throw trouble;
            if (batch.Count < size)
                yield break;
            next = batch[^1].Seq + 1;
        }
    }

    /// <summary>Fills the batch as far as the journal is sound, and returns what stopped it.</summary>
    private static JournalException? Fill(List<Stored> batch, long next, int size, Looking<JournalException?> looking)
    {
        try
        {
            return looking(
                view =>
                {
                    foreach (var stored in view.Records.From(next, size))
                    {
                        _ = stored.Bytes; // what does not unpack ends the batch before it
                        batch.Add(stored);
                    }

                    return batch.Count < size && view.Damage is { } damage ? new JournalException(JournalTrouble.Damaged, damage) : null;
                },
                null);
        }
        catch (JournalException failed)
        {
            return batch.Count == 0 ? failed : new(failed.Trouble, $"after record {batch[^1].Seq}: {failed.Message}", failed);
        }
    }

    private T Look<T>(Func<RecordTable, T> look, T whenEmpty) => _access.Look(
        view => view.Damage is { } damage
            ? throw new JournalException(JournalTrouble.Damaged, $"{damage}; what stands before it can be exported")
            : look(view.Records),
        whenEmpty);

    private delegate T Looking<T>(Func<View, T> look, T whenEmpty);
}
