using Logbook.Journal;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// Reads the records of documents, and keeps the last hundreds of them: what a shift, a note and a chart ask for is mostly the
/// same day or two, and reading a record takes far longer than comparing its bytes with those that were read before.
/// </summary>
internal sealed class ParsedRecords
{
    private readonly (byte[] Packed, JournalRecord Record)?[] _kept = new (byte[], JournalRecord)?[256];

    /// <exception cref="JournalException">The document holds no record.</exception>
    public JournalRecord Of(Stored stored)
    {
        ref var kept = ref _kept[(int)((ulong)stored.Seq % (ulong)_kept.Length)];
        if (kept is { } known && known.Packed.AsSpan().SequenceEqual(stored.Packed))
            return known.Record;

        try
        {
            var record = JournalRecord.Parse(stored.Bytes);
            kept = (stored.Packed, record);
            return record;
        }
        catch (FormatException broken)
        {
            throw new JournalException(JournalTrouble.Damaged, $"record {stored.Seq} cannot be read: {broken.Message}", broken);
        }
    }
}
