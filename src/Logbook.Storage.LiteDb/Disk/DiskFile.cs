using System.Runtime.InteropServices;
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

    // fdatasync: everything but the time of the last change, which costs as much as the save itself. What the length says is included.
    public void Sync()
    {
        if (!OperatingSystem.IsLinux())
            RandomAccess.FlushToDisk(_handle);
        else if (CLibrary.SyncData(_handle) is var error and not 0)
            throw new IOException($"the disk did not take what was written: {Marshal.GetPInvokeErrorMessage(error)}", error);
    }

    /// <summary>Two files that were changed in the same moment of the file system's clock would be taken for one.</summary>
    public bool IsAt(string path) => new FileInfo(path) is { Exists: true } named && named.LastWriteTimeUtc == File.GetLastWriteTimeUtc(_handle);

    public void Dispose() => _handle.Dispose();
}
