using Logbook.Journal;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// Reads the records of documents, and keeps the last hundreds of them: what a shift, a note and a chart ask for is mostly the
/// same day or two, and reading a record takes far longer than comparing its bytes with those that were read before.
/// </summary>
internal sealed class ParsedRecords
{
    private readonly Kept?[] _kept = new Kept?[256];

    /// <summary>One that is put down and picked up as a whole, so that several may read side by side.</summary>
    private sealed record Kept(byte[] Packed, JournalRecord Record);

    /// <exception cref="JournalException">The document holds no record.</exception>
    public JournalRecord Of(Stored stored)
    {
        ref var kept = ref _kept[(int)((ulong)stored.Seq % (ulong)_kept.Length)];
        if (kept is { } known && known.Packed.AsSpan().SequenceEqual(stored.Packed))
            return known.Record;

        try
        {
            var record = JournalRecord.Parse(stored.Bytes);
            kept = new Kept(stored.Packed, record);
            return record;
        }
        catch (FormatException broken)
        {
            throw new JournalException(JournalTrouble.Damaged, $"record {stored.Seq} cannot be read: {broken.Message}", broken);
        }
    }
}
