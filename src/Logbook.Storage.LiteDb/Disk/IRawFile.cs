namespace Logbook.Storage.LiteDb.Disk;

/// <summary>A file without buffers of its own: what the store asks of a disk, and what a test can make fail.</summary>
internal interface IRawFile : IDisposable
{
    long Length { get; set; }

    /// <summary>Fills <paramref name="into"/> as far as the file reaches and returns how much that was.</summary>
    int Read(Span<byte> into, long offset);

    void Write(ReadOnlySpan<byte> bytes, long offset);

    /// <summary>Returns when everything written so far is on the disk.</summary>
    void Sync();
}
