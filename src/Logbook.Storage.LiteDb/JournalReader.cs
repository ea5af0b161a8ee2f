using Logbook.Journal;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// Reading, beside whoever writes. Long reads go in batches, each out of its own snapshot: records are only ever added, so what
/// comes out is the journal as it was at the last batch.
/// </summary>
internal sealed class JournalReader(JournalFolder folder)
{
    // Most reads want one record or the few new ones.
    private const int FirstBatch = 16;
    private const int BatchSize = 512;

    public Head Head => Look(records => records.Last() is { } last ? Head.Of(JournalRecord.Parse(last.Bytes)) : Head.Empty, Head.Empty);

    public IEnumerable<JournalRecord> Read(long fromSeq)
    {
        Head? head = fromSeq <= 1 ? Head.Empty : null;
        foreach (var stored in Batches(Math.Max(1, fromSeq)))
        {
            var record = Parse(stored);
            if (head is not null && Chain.WhyNot(record, head) is { } why)
                throw new JournalException(JournalTrouble.Damaged, why);
            head = Head.Of(record);
            yield return record;
        }
    }

    public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq)
    {
        foreach (var stored in Batches(Math.Max(1, fromSeq)))
            yield return stored.Bytes;
    }

    public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to)
    {
        var wanted = Look(records => records.SeqsSpeaking(from, to), []);
        while (wanted.Count > 0)
        {
            var batch = Look(records => records.From(wanted.Min, BatchSize).ToList(), []);
            foreach (var stored in batch.Where(stored => wanted.Remove(stored.Seq)))
            {
                if (Parse(stored) is var record && record.At >= from && record.At < to)
                    yield return record;
            }

            if (batch.Count == 0)
                throw new JournalException(JournalTrouble.Damaged, $"record {wanted.Min} is in the index by time, but not there");
        }
    }

    public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to) =>
        Look(records => new PointSearch(records, point).Between(from, to), []);

    public ChainCheck Verify()
    {
        JournalException? trouble = null;
        Stored? current = null;
        var check = Chain.Verify(Sound(), Anchor(), record => RecordTable.WhyNot(current!, record));
        return trouble is not null ? check with { FirstBad = check.FirstBad ?? check.Records + 1, Why = trouble.Message }
            : check.Ok ? WithIndex(check) : check;

        IEnumerable<ReadOnlyMemory<byte>> Sound()
        {
            using var all = Batches(1).GetEnumerator();
            while (Next(all, out trouble))
            {
                current = all.Current;
                yield return current.Bytes;
            }
        }
    }

    /// <summary>Reads the record of a document.</summary>
    /// <exception cref="JournalException">It is none.</exception>
    internal static JournalRecord Parse(Stored stored)
    {
        try
        {
            return JournalRecord.Parse(stored.Bytes);
        }
        catch (FormatException broken)
        {
            throw new JournalException(JournalTrouble.Damaged, $"record {stored.Seq} cannot be read: {broken.Message}", broken);
        }
    }

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

    private Head? Anchor() => StoreFault.Guard("the noted end cannot be read", folder.ReadAnchor);

    // A record that the index by time does not know would be missing from every list that goes by time.
    private ChainCheck WithIndex(ChainCheck check)
    {
        var found = Look(records => records.SeqsSpeaking(DateTimeOffset.MinValue, DateTimeOffset.MaxValue), []);
        for (var seq = 1L; seq <= check.Records; seq++)
        {
            if (!found.Contains(seq))
                return check with { FirstBad = seq, Why = $"record {seq} is sound, but missing from the index by time" };
        }

        return check;
    }

    private IEnumerable<Stored> Batches(long next)
    {
        for (var size = FirstBatch; ; size = BatchSize)
        {
            var batch = new List<Stored>();
            var trouble = Fill(batch, next, size);
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
    private JournalException? Fill(List<Stored> batch, long next, int size)
    {
        try
        {
            return StoreFault.Guard("the journal cannot be read", () =>
            {
                using var snapshot = Snapshot.Open(folder);
                foreach (var stored in snapshot?.Records.From(next, size) ?? [])
                    batch.Add(stored);
                return batch.Count < size && snapshot?.Damage is { } damage ? new JournalException(JournalTrouble.Damaged, damage) : null;
            });
        }
        catch (JournalException failed)
        {
            return batch.Count == 0 ? failed : new(failed.Trouble, $"after record {batch[^1].Seq}: {failed.Message}", failed);
        }
    }

    private T Look<T>(Func<RecordTable, T> look, T whenEmpty) => StoreFault.Guard("the journal cannot be read", () =>
    {
        using var snapshot = Snapshot.Open(folder);
        if (snapshot is null)
            return whenEmpty;
        return snapshot.Damage is { } damage
            ? throw new JournalException(JournalTrouble.Damaged, $"{damage}; what stands before it can be exported")
            : look(snapshot.Records);
    });
}
