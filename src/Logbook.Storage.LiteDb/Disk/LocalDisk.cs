using System.Runtime.InteropServices;

namespace Logbook.Storage.LiteDb.Disk;

/// <summary>The machine's own file system.</summary>
internal sealed class LocalDisk : IDisk
{
    public long? LengthOf(string path) => new FileInfo(path) is { Exists: true } file ? file.Length : null;

    public bool IsAt(string path, IRawFile file) => ((DiskFile)file).IsAt(path);

    public IRawFile ForReading(string path) => DiskFile.ForReading(path);

    public IRawFile ForWriting(string path) => DiskFile.ForWriting(path);

    public void Replace(string path, ReadOnlySpan<byte> content)
    {
        var draft = path + ".new";
        using (var file = DiskFile.ForWriting(draft))
        {
            file.Length = 0;
            file.Write(content, 0);
            file.Sync();
        }

        File.Move(draft, path, overwrite: true);
        SyncFolder(Path.GetDirectoryName(path)!);
    }

    public void CreateFolder(string path)
    {
        if (Directory.Exists(path))
            return;
        Directory.CreateDirectory(path);
        SyncFolder(Path.GetDirectoryName(path)!);
    }

    public void SyncFolder(string path)
    {
        if (OperatingSystem.IsWindows())
            return; // NTFS keeps a journal of names itself
        var handle = CLibrary.Open(path, CLibrary.ReadOnly);
        if (handle < 0)
            throw new IOException($"cannot open folder {path}", Marshal.GetLastPInvokeError());
        var failed = CLibrary.Fsync(handle) != 0;
        var error = Marshal.GetLastPInvokeError();
        _ = CLibrary.Close(handle);
        if (failed)
            throw new IOException($"cannot bring folder {path} to the disk", error);
    }
}
