using System.Buffers;
using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace Logbook.Storage.LiteDb.Disk;

/// <summary>
/// The log on the disk: one checksummed frame for each save since the last checkpoint. A frame that does not check ends it: a
/// torn end is what a power cut leaves, and was never acknowledged. But a sound frame behind one that does not check means
/// that acknowledged saves are damaged: that is reported, and nothing is cut away. Zeros behind the last frame are room.
/// </summary>
/// <param name="file">Where the frames lie.</param>
/// <param name="room">Length in bytes that a writer gives the file beforehand; 0 for a file that grows with each save.</param>
internal sealed class FrameFile(IRawFile file, long room = 0)
{
    private static readonly byte[] Zeros = new byte[64 * 1024];

    private ulong _generation = NewGeneration();
    private uint _next;
    private long _last;
    private long _end;
    private long _length;
    private bool _isTorn;
    private bool _failed;

    /// <summary>Where the log is damaged, in words; null when it is sound.</summary>
    public string? Damage { get; private set; }

    /// <summary>How far the sound frames reach.</summary>
    public LogEnd End => new(_generation, _end);

    /// <summary>Reads the frames from the first on and hands over the pages of each with their place in bytes.</summary>
    /// <remarks>
    /// A writer may be at work beside it: then what was read before a save can lie in front of what was read after the next one, and
    /// look like damage between them. It is read once more from there: what is damaged is so again.
    /// </remarks>
    public void Replay(PageSink sink)
    {
        var (image, before) = (0L, 0L);
        do
        {
            image = Take(sink, image);
            before = _end;
            image = Damage is null ? image : Take(sink, image);
        }
        while (Damage is not null && _end > before);
    }

    private long Take(PageSink sink, long image)
    {
        var bytes = GC.AllocateUninitializedArray<byte>((int)file.Length);
        _length = file.Read(bytes, 0);
        var all = bytes.AsSpan(0, (int)_length);
        while (SoundFrameAt(all, (int)_end) is { } frame && Follows(frame) && frame.FirstPage * (long)FrameHeader.PageSize == image)
        {
            sink(image, all.Slice((int)_end + FrameHeader.Size, frame.Length));
            _generation = frame.Generation;
            _next = frame.Number + 1;
            image += frame.Length;
            _last = _end;
            _end += FrameHeader.Size + frame.Length;
        }

        _isTorn = all[(int)_end..].ContainsAnyExcept((byte)0);
        Damage = FindDamage(all);
        return image;
    }

    /// <summary>Cuts a torn end off, so that the next frame stands behind the last sound one, and makes room.</summary>
    public void BeginWriting()
    {
        if (Damage is not null)
            return;
        if (_isTorn)
            TakeBack();
        MakeRoom();
    }

    /// <summary>Adds one frame and returns when it is on the disk.</summary>
    public void Append(long position, ReadOnlySpan<byte> pages)
    {
        if (_failed || Damage is not null)
            throw new InvalidOperationException("a log that failed or is damaged takes no more frames");
        var size = FrameHeader.Size + pages.Length;
        var buffer = ArrayPool<byte>.Shared.Rent(size);
        try
        {
            FrameHeader.Of(_generation, _next, (int)(position / FrameHeader.PageSize), pages).Write(buffer);
            pages.CopyTo(buffer.AsSpan(FrameHeader.Size));
            _failed = true; // until it is known to be on the disk
            file.Write(buffer.AsSpan(0, size), _end);
            file.Sync();
            _failed = false;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }

        _next++;
        _last = _end;
        _end += size;
        _length = Math.Max(_length, _end);
    }

    /// <summary>False when another program changed the file since.</summary>
    public bool IsAsLeft() => file.Length == _length
        && (_end == 0 || (FrameHeader.At(file, _last) is { } last && last.Generation == _generation && last.Number == _next - 1));

    /// <summary>Takes back a frame that could not be brought to the disk: it must not appear later as saved.</summary>
    public void TakeBack()
    {
        file.Length = _end;
        _length = _end;
        file.Sync();
    }

    /// <summary>Empties the log: a checkpoint has brought its pages into the data file.</summary>
    public void Reset()
    {
        _end = 0;
        TakeBack();
        _generation = NewGeneration();
        _next = 0;
        MakeRoom();
    }

    // Once the zeros are on the disk, a save that is written over them changes nothing about the file, and the disk is done
    // with it in about half the time. A full disk may well have no room for all of them and still take the next save.
    private void MakeRoom()
    {
        if (_length >= room)
            return;
        try
        {
            for (var at = _length; at < room; at += Zeros.Length)
                file.Write(Zeros.AsSpan(0, (int)Math.Min(Zeros.Length, room - at)), at);
            file.Sync();
        }
        catch (IOException full) when (StoreFault.IsFull(full))
        {
            // What room there is will do: the file grows with the saves, as far as it can.
        }

        _length = file.Length;
    }

    private bool Follows(FrameHeader frame) => frame.Number == _next && (_next == 0 || frame.Generation == _generation);

    private static FrameHeader? SoundFrameAt(ReadOnlySpan<byte> all, int offset) =>
        FrameHeader.Read(all[offset..]) is { } frame
        && frame.Length <= all.Length - offset - FrameHeader.Size
        && frame.Fits(all.Slice(offset + FrameHeader.Size, frame.Length))
            ? frame
            : null;

    private string? FindDamage(ReadOnlySpan<byte> all)
    {
        for (var offset = (int)_end + 1; FrameHeader.Next(all, offset) is { } place; offset = place + 1)
        {
            if (SoundFrameAt(all, place) is { } later && IsLater(later))
                return $"the log is damaged at byte {_end}: a sound save follows at byte {place}";
        }

        return null;
    }

    private bool IsLater(FrameHeader frame) => _next == 0 ? frame.Number > 0 : frame.Generation == _generation && frame.Number > _next;

    private static ulong NewGeneration() => BinaryPrimitives.ReadUInt64LittleEndian(RandomNumberGenerator.GetBytes(sizeof(ulong)));
}

/// <summary>Where the frames end. No two moments of a journal have the same one, but for those when the log is empty.</summary>
/// <param name="Generation">Of the frames: new after every checkpoint.</param>
/// <param name="At">In bytes from the log's beginning; 0 when it is empty.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LogEnd(ulong Generation, long At);

/// <summary>Takes pages and their place in the log's image.</summary>
internal delegate void PageSink(long position, ReadOnlySpan<byte> pages);
