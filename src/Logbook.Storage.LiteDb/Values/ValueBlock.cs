using System.Buffers.Binary;
using System.IO.Hashing;
using System.Text;
using Logbook.Journal;

namespace Logbook.Storage.LiteDb.Values;

/// <summary>
/// What a block of records that follow one another says of each point, corrections left aside: they may come at any time later.
/// </summary>
/// <param name="Before">Hash of the record before the block's first.</param>
/// <param name="Last">Hash of its last record.</param>
/// <param name="Points">Tag to its values, packed; and the times between which they lie.</param>
internal sealed record ValueBlock(string Before, string Last, IReadOnlyDictionary<string, KeptPoint> Points)
{
    private const int Form = 1; // another number when the form, or what an entry says of a point, changes

    public static ValueBlock Of(IReadOnlyList<JournalRecord> records)
    {
        var points = new SortedDictionary<string, List<PointInEntry>>(StringComparer.OrdinalIgnoreCase);
        foreach (var record in records)
        {
            foreach (var (point, values) in record.Body is Entry entry ? PointInEntry.All(record, entry) : [])
                (points.TryGetValue(point, out var known) ? known : points[point] = []).Add(values);
        }

        return new(records[0].Prev, records[^1].Hash, points.ToDictionary(p => p.Key, p => KeptPoint.Of(p.Value), StringComparer.OrdinalIgnoreCase));
    }

    /// <summary>What the block says of a point in [from, to), and perhaps a little more.</summary>
    public IReadOnlyList<PointInEntry> Of(string point, DateTimeOffset from, DateTimeOffset to) =>
        Points.TryGetValue(point, out var kept) && kept.First < to && kept.Last >= from ? kept.Entries() : [];

    /// <summary>Whether both say the same: how bytes are packed may differ from one machine to the next.</summary>
    public bool SaysTheSame(ValueBlock other) =>
        Before == other.Before && Last == other.Last && Points.Count == other.Points.Count
        && Points.All(p => other.Points.TryGetValue(p.Key, out var theirs) && ValueColumns.Write(p.Value.Entries()).AsSpan().SequenceEqual(ValueColumns.Write(theirs.Entries())));

    /// <summary>A checksum, then the block. A file that a power cut tore does not match it.</summary>
    public byte[] ToBytes()
    {
        using var bytes = new MemoryStream();
        using var to = new BinaryWriter(bytes, Encoding.UTF8);
        to.Write(0UL);
        to.Write(Form);
        to.Write(Before);
        to.Write(Last);
        to.Write7BitEncodedInt(Points.Count);
        foreach (var (tag, kept) in Points.OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            to.Write(tag);
            to.Write(kept.First.ToUnixTimeMilliseconds());
            to.Write(kept.Last.ToUnixTimeMilliseconds());
            to.Write7BitEncodedInt(kept.Packed.Length);
            to.Write(kept.Packed.Span);
        }

        to.Flush();
        var all = bytes.ToArray();
        BinaryPrimitives.WriteUInt64LittleEndian(all, Sum(all));
        return all;
    }

    /// <summary>Null when the bytes are torn, or of another form.</summary>
    public static ValueBlock? Read(byte[] bytes)
    {
        if (bytes.Length < sizeof(ulong) || BinaryPrimitives.ReadUInt64LittleEndian(bytes) != Sum(bytes))
            return null;
        using var from = new BinaryReader(new MemoryStream(bytes), Encoding.UTF8);
        from.ReadUInt64();
        if (from.ReadInt32() != Form)
            return null;
        var (before, last, count) = (from.ReadString(), from.ReadString(), from.Read7BitEncodedInt());
        var points = new Dictionary<string, KeptPoint>(count, StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < count; i++)
        {
            var tag = from.ReadString();
            var (first, newest) = (DateTimeOffset.FromUnixTimeMilliseconds(from.ReadInt64()), DateTimeOffset.FromUnixTimeMilliseconds(from.ReadInt64()));
            var length = from.Read7BitEncodedInt();
            points[tag] = new(first, newest, bytes.AsMemory((int)from.BaseStream.Position, length));
            from.BaseStream.Position += length;
        }

        return new(before, last, points);
    }

    private static ulong Sum(ReadOnlySpan<byte> bytes) => XxHash3.HashToUInt64(bytes[sizeof(ulong)..]);
}

/// <summary>One point in one block.</summary>
internal sealed record KeptPoint(DateTimeOffset First, DateTimeOffset Last, ReadOnlyMemory<byte> Packed)
{
    public static KeptPoint Of(IReadOnlyList<PointInEntry> entries)
    {
        var times = entries.SelectMany(e => e.Read.Concat(e.Derived)).Select(v => v.At).ToList();
        return new(times.Min(), times.Max(), LiteDb.Packed.Pack(ValueColumns.Write(entries)));
    }

    public IReadOnlyList<PointInEntry> Entries() => ValueColumns.Read(LiteDb.Packed.Unpack(Packed.Span));
}
