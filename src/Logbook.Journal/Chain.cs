namespace Logbook.Journal;

/// <summary>What a look at the chain found.</summary>
/// <param name="Records">How many records are sound, from the first on.</param>
/// <param name="Head">The end of the sound part.</param>
/// <param name="FirstBad">Sequence number of the first record that is wrong or missing; null when all is well.</param>
/// <param name="Why">What is wrong with it, in one line; null when all is well.</param>
public sealed record ChainCheck(long Records, Head Head, long? FirstBad, string? Why)
{
    public bool Ok => FirstBad is null;
}

/// <summary>Whether records follow one another as they were written.</summary>
public static class Chain
{
    /// <summary>Reads the records' bytes from the first on and stops at the first that does not follow.</summary>
    /// <param name="records">The bytes as they lie on the disk, in order.</param>
    /// <param name="anchor">A head that was noted outside the store: the chain must reach it and pass through it.</param>
    /// <param name="also">What else a store wants of a record that follows: the reason against it, or null.</param>
    public static ChainCheck Verify(
        IEnumerable<ReadOnlyMemory<byte>> records, Head? anchor = null, Func<JournalRecord, string?>? also = null)
    {
        var head = Head.Empty;
        string? chain = null;
        foreach (var bytes in records)
        {
            if ((WhyNot(bytes, head, chain, anchor, out var record) ?? also?.Invoke(record!)) is { } why)
                return new(head.Seq, head, head.Seq + 1, why);
            head = Head.Of(record!);
            chain ??= record!.Chain;
        }

        return anchor is not null && head.Seq < anchor.Seq
            ? new(head.Seq, head, head.Seq + 1, $"the journal ends at {head.Seq}, but {anchor.Seq} records had been noted outside it")
            : new(head.Seq, head, null, null);
    }

    /// <summary>Why this record cannot stand after <paramref name="head"/>, in one line; null when it can.</summary>
    public static string? WhyNot(JournalRecord record, Head head)
    {
        if (record.Seq != head.Seq + 1)
            return $"record {record.Seq} stands where {head.Seq + 1} is due";
        return string.Equals(record.Prev, head.Hash, StringComparison.Ordinal)
            ? null
            : $"record {record.Seq} does not carry the hash of the record before it: one of the two was changed";
    }

    /// <summary>Refuses a draft that names another chain.</summary>
    /// <exception cref="JournalException">It does.</exception>
    public static void MustMatch(string chain, RecordDraft draft)
    {
        if (!string.Equals(chain, draft.Chain, StringComparison.Ordinal))
            throw new JournalException(JournalTrouble.Unreadable, $"this journal belongs to site '{chain}', not to '{draft.Chain}'; nothing was saved");
    }

    private static string? WhyNot(ReadOnlyMemory<byte> bytes, Head head, string? chain, Head? anchor, out JournalRecord? record)
    {
        record = null;
        try
        {
            record = JournalRecord.Parse(bytes);
        }
        catch (FormatException unreadable)
        {
            return $"record {head.Seq + 1} cannot be read: {unreadable.Message}";
        }

        if (WhyNot(record, head) is { } why)
            return why;
        if (chain is not null && !string.Equals(chain, record.Chain, StringComparison.Ordinal))
            return $"record {record.Seq} belongs to '{record.Chain}', the records before it to '{chain}'";
        return anchor is not null && anchor.Seq == record.Seq && !string.Equals(anchor.Hash, record.Hash, StringComparison.Ordinal)
            ? $"record {record.Seq} is not the one that was noted outside the journal"
            : null;
    }
}
