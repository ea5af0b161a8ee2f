using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Logbook.Storage.LiteDb.Disk;

/// <summary>What .NET does not offer: a folder opened as a file, and opening without waiting. Not for Windows.</summary>
internal static class CLibrary
{
    public const int ReadOnly = 0;

    /// <summary>O_NONBLOCK of Linux, and of macOS and BSD.</summary>
    public static readonly int WithoutWaiting = OperatingSystem.IsLinux() ? 0x800 : 0x4;

    /// <summary>SEEK_CUR.</summary>
    public const int FromHere = 1;

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    public static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    /// <summary>Negative when there is no place to go to, as in a pipe.</summary>
    [DllImport("libc", EntryPoint = "lseek")]
    public static extern nint Seek(int handle, nint offset, int whence);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    public static extern int Fsync(int handle);

    /// <summary>fdatasync, again when a signal interrupts it; returns 0, or the error's number.</summary>
    public static int SyncData(SafeFileHandle handle)
    {
        const int interrupted = 4; // EINTR
        int error;
        do
            error = DataSync(handle) == 0 ? 0 : Marshal.GetLastPInvokeError();
        while (error == interrupted);
        return error;
    }

    [DllImport("libc", EntryPoint = "fdatasync", SetLastError = true)]
    private static extern int DataSync(SafeFileHandle handle);

    [DllImport("libc", EntryPoint = "close")]
    public static extern int Close(int handle);
}
