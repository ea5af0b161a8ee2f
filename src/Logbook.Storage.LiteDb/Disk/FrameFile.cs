using System.Buffers;
using System.Buffers.Binary;
using System.Security.Cryptography;

namespace Logbook.Storage.LiteDb.Disk;

/// <summary>
/// The log on the disk: one checksummed frame for each save since the last checkpoint. A frame that does not check ends it: a
/// torn end is what a power cut leaves, and was never acknowledged. But a sound frame behind one that does not check means
/// that acknowledged saves are damaged: that is reported, and nothing is cut away.
/// </summary>
internal sealed class FrameFile(IRawFile file)
{
    private ulong _generation = NewGeneration();
    private uint _next;
    private long _end;
    private bool _failed;

    /// <summary>Where the log is damaged, in words; null when it is sound.</summary>
    public string? Damage { get; private set; }

    /// <summary>How far the sound frames reach.</summary>
    public long End => _end;

    /// <summary>Reads the frames from the first on and hands over the pages of each with their place in bytes.</summary>
    public void Replay(PageSink sink)
    {
        var bytes = new byte[file.Length];
        var length = file.Read(bytes, 0);
        var all = bytes.AsSpan(0, length);
        var image = 0L;
        while (SoundFrameAt(all, (int)_end) is { } frame && Follows(frame) && frame.FirstPage * (long)FrameHeader.PageSize == image)
        {
            sink(image, all.Slice((int)_end + FrameHeader.Size, frame.Length));
            _generation = frame.Generation;
            _next = frame.Number + 1;
            image += frame.Length;
            _end += FrameHeader.Size + frame.Length;
        }

        Damage = FindDamage(all);
    }

    /// <summary>Cuts a torn end off, so that the next frame stands behind the last sound one.</summary>
    public void CutTornEnd()
    {
        if (Damage is not null || file.Length == _end)
            return;
        file.Length = _end;
        file.Sync();
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
        _end += size;
    }

    /// <summary>Takes back a frame that could not be brought to the disk: it must not appear later as saved.</summary>
    public void TakeBack()
    {
        file.Length = _end;
        file.Sync();
    }

    /// <summary>Empties the log: a checkpoint has brought its pages into the data file.</summary>
    public void Reset()
    {
        file.Length = 0;
        file.Sync();
        _generation = NewGeneration();
        _next = 0;
        _end = 0;
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
        for (var offset = (int)_end + 1; offset + FrameHeader.Size <= all.Length; offset++)
        {
            if (SoundFrameAt(all, offset) is { } later && IsLater(later))
                return $"the log is damaged at byte {_end}: a sound save follows at byte {offset}";
        }

        return null;
    }

    private bool IsLater(FrameHeader frame) => _next == 0 ? frame.Number > 0 : frame.Generation == _generation && frame.Number > _next;

    private static ulong NewGeneration() => BinaryPrimitives.ReadUInt64LittleEndian(RandomNumberGenerator.GetBytes(sizeof(ulong)));
}

/// <summary>Takes pages and their place in the log's image.</summary>
internal delegate void PageSink(long position, ReadOnlySpan<byte> pages);
