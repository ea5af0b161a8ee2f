namespace Logbook.Storage.LiteDb.Disk;

/// <summary>
/// The data file as LiteDB sees it. <see cref="Flush"/> really brings it to the disk. It knows nothing of the database: LiteDB
/// keeps streams in a pool that outlives the database, and whatever a stream refers to would be kept with it.
/// </summary>
internal sealed class DataStream(IRawFile file) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => file.Length;

    public override long Position { get; set; }

    public override void Flush() => file.Sync();

    public override int Read(byte[] buffer, int offset, int count)
    {
        var read = file.Read(buffer.AsSpan(offset, count), Position);
        Position += read;
        return read;
    }

    public override void Write(byte[] buffer, int offset, int count)
    {
        file.Write(buffer.AsSpan(offset, count), Position);
        Position += count;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => Length + offset,
    };

    public override void SetLength(long value) => file.Length = value;
}
