using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Values;

/// <summary>
/// What the records say of each point, a file for each block of records, so that a chart over years need not read them all. As
/// with the states that are kept: the files may be deleted at any time, and one that does not check is made anew.
/// </summary>
internal sealed class KeptValues(string folder)
{
    public const int Size = 256;

    /// <summary>The blocks that lie as a whole up to <paramref name="head"/>, the newest first. What is missing is made and kept.</summary>
    /// <param name="head">A record that is in the journal.</param>
    /// <param name="read">Some records, by the number of the first and how many they are.</param>
    public IEnumerable<ValueBlock> Blocks(long head, Func<long, int, IReadOnlyList<JournalRecord>> read)
    {
        // One block leads to the one before it as their records do, so that only the newest is held against the journal.
        string? last = null;
        for (var block = head / Size; block > 0; block--)
        {
            var kept = Read(block);
            if (kept is null || kept.Last != (last ?? read(block * Size, 1)[0].Hash))
                kept = Keep(block, read(((block - 1) * Size) + 1, Size));
            yield return kept;
            last = kept.Before;
        }
    }

    /// <summary>Makes the block that ends with this record, unless it is there.</summary>
    public void KeepUpTo(long seq, Func<long, int, IReadOnlyList<JournalRecord>> read)
    {
        if (seq > 0 && seq % Size == 0 && !File.Exists(PathOf(seq / Size)))
            Keep(seq / Size, read(seq - Size + 1, Size));
    }

    /// <summary>Why what is kept of these records is not what they say; null when it is, or nothing was kept.</summary>
    public string? WhyNot(IReadOnlyList<JournalRecord> records)
    {
        var block = records[^1].Seq / Size;
        return Read(block) is { } kept && !kept.SaysTheSame(ValueBlock.Of(records))
            ? $"record {records[^1].Seq} is sound, but the values kept in {PathOf(block)} are not those of the records: delete that file"
            : null;
    }

    // When the folder cannot be written (a full disk, a reader without the right), the next look takes longer, and that is all.
    private ValueBlock Keep(long block, IReadOnlyList<JournalRecord> records)
    {
        var made = ValueBlock.Of(records);
        _ = OnDisk.Refusal(() =>
        {
            Directory.CreateDirectory(folder);
            var draft = string.Create(CultureInfo.InvariantCulture, $"{PathOf(block)}.{Environment.ProcessId}");
            File.WriteAllBytes(draft, made.ToBytes());
            File.Move(draft, PathOf(block), overwrite: true);
        });
        return made;
    }

    private ValueBlock? Read(long block) => OnDisk.Try(() => ValueBlock.Read(NoPipe.Bytes(PathOf(block))), out _);

    private string PathOf(long block) => Path.Combine(folder, (block * Size).ToString(CultureInfo.InvariantCulture) + ".values");
}
