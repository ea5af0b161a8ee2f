using System.Runtime.InteropServices;

namespace Logbook.Storage.LiteDb.Disk;

/// <summary>What makes names last: a file that was created or renamed survives a power cut only once its folder is on the disk too.</summary>
internal static class Folder
{
    private const int ReadOnly = 0;

    /// <summary>Creates the folder, if need be, so that it lasts.</summary>
    public static void Create(string path)
    {
        if (Directory.Exists(path))
            return;
        Directory.CreateDirectory(path);
        Sync(Path.GetDirectoryName(Path.GetFullPath(path))!);
    }

    /// <summary>Gives the file this content as a whole: after a power cut it is either the old one or the new one.</summary>
    public static void Replace(string path, ReadOnlySpan<byte> content)
    {
        var draft = path + ".new";
        using (var file = DiskFile.ForWriting(draft))
        {
            file.Length = 0;
            file.Write(content, 0);
            file.Sync();
        }

        File.Move(draft, path, overwrite: true);
        Sync(Path.GetDirectoryName(path)!);
    }

    /// <summary>Returns when the folder's names are on the disk.</summary>
    public static void Sync(string path)
    {
        if (OperatingSystem.IsWindows())
            return; // NTFS keeps its own journal of names
        var handle = Open(path, ReadOnly);
        if (handle < 0)
            throw new IOException($"cannot open folder {path}", Marshal.GetLastPInvokeError());
        var failed = Fsync(handle) != 0;
        var error = Marshal.GetLastPInvokeError();
        _ = Close(handle);
        if (failed)
            throw new IOException($"cannot bring folder {path} to the disk", error);
    }

    // .NET opens no folder as a file, so these three are asked of the C library.
    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    private static extern int Fsync(int handle);

    [DllImport("libc", EntryPoint = "close")]
    private static extern int Close(int handle);
}
