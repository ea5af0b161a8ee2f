namespace Logbook.Storage.LiteDb.Disk;

/// <summary>A file that is never on a disk: where a new data file is made before it gets its name, and the log of a reader that finds none.</summary>
internal sealed class MemoryFile : IRawFile
{
    private readonly MemoryStream _bytes = new();

    public long Length
    {
        get => _bytes.Length;
        set => _bytes.SetLength(value);
    }

    public byte[] ToArray() => _bytes.ToArray();

    public int Read(Span<byte> into, long offset)
    {
        _bytes.Position = offset;
        return _bytes.Read(into);
    }

    public void Write(ReadOnlySpan<byte> bytes, long offset)
    {
        _bytes.Position = offset;
        _bytes.Write(bytes);
    }

    public void Sync()
    {
        // There is nothing below it.
    }

    public void Dispose() => _bytes.Dispose();
}
