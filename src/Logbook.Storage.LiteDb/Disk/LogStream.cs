namespace Logbook.Storage.LiteDb.Disk;

/// <summary>
/// LiteDB's log, kept in memory: LiteDB itself never forces its log to the disk. <see cref="Save"/> brings all that was added
/// since the last one to the disk as one frame.
/// </summary>
internal sealed class LogStream : Stream
{
    private readonly FrameFile _frames;
    private byte[] _image = [];
    private long _length;
    private long _saved;

    public LogStream(FrameFile frames)
    {
        _frames = frames;
        frames.Replay((position, pages) =>
        {
            Write(position, pages);
            _saved = _length;
        });
    }

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => _length;

    public override long Position { get; set; }

    /// <summary>Returns when everything that LiteDB wrote here is on the disk.</summary>
    public void Save()
    {
        if (_length == _saved)
            return;
        _frames.Append(_saved, _image.AsSpan((int)_saved, (int)(_length - _saved)));
        _saved = _length;
    }

    /// <summary>LiteDB empties its log when a checkpoint has brought it into the data file.</summary>
    public override void SetLength(long value)
    {
        if (value != 0)
            throw new NotSupportedException("the log is emptied as a whole or not at all");
        _frames.Reset();
        _length = 0;
        _saved = 0;
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var read = (int)Math.Max(0, Math.Min(count, _length - Position));
        _image.AsSpan((int)Position, read).CopyTo(buffer.AsSpan(offset));
        Position += read;
        return read;
    }

    public override void Write(byte[] buffer, int offset, int count)
    {
        if (Position < _saved)
            throw new NotSupportedException("what is on the disk is not written again");
        Write(Position, buffer.AsSpan(offset, count));
        Position += count;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => _length + offset,
    };

    /// <summary>Nothing: <see cref="Save"/> decides when the disk is asked.</summary>
    public override void Flush()
    {
    }

    private void Write(long position, ReadOnlySpan<byte> bytes)
    {
        var end = position + bytes.Length;
        if (end > _image.Length)
            Array.Resize(ref _image, (int)Math.Min(Array.MaxLength, Math.Max(end, _image.Length * 2L)));
        bytes.CopyTo(_image.AsSpan((int)position));
        _length = Math.Max(_length, end);
    }
}
