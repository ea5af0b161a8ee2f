using Microsoft.Win32.SafeHandles;

namespace Logbook.Storage.LiteDb.Disk;

/// <summary>A file on the disk. Who may write it is settled by the lock files, never by the way it is opened.</summary>
internal sealed class DiskFile : IRawFile
{
    private const int FileTooBig = 27;

    private readonly SafeFileHandle _handle;

    private DiskFile(string path, FileMode mode, FileAccess access)
    {
        NoPipe.At(path);
        _handle = File.OpenHandle(path, mode, access, FileShare.ReadWrite | FileShare.Delete);
    }

    public static DiskFile ForReading(string path) => new(path, FileMode.Open, FileAccess.Read);

    public static DiskFile ForWriting(string path) => new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite);

    public long Length
    {
        get => RandomAccess.GetLength(_handle);
        set => RandomAccess.SetLength(_handle, value);
    }

    public int Read(Span<byte> into, long offset)
    {
        var total = 0;
        while (total < into.Length)
        {
            var read = RandomAccess.Read(_handle, into[total..], offset + total);
            if (read == 0)
                break;
            total += read;
        }

        return total;
    }

    public void Write(ReadOnlySpan<byte> bytes, long offset)
    {
        try
        {
            RandomAccess.Write(_handle, bytes, offset);
        }
        catch (ArgumentOutOfRangeException) // how .NET words EFBIG: the file system's or the user's limit is reached
        {
            throw new IOException("the file may not grow any further", FileTooBig);
        }
    }

    public void Sync() => RandomAccess.FlushToDisk(_handle);

    public void Dispose() => _handle.Dispose();
}
