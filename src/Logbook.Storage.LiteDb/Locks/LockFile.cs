using System.Diagnostics;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Locks;

/// <summary>
/// A lock that dies with its process: the system's lock on an open file, released by the kernel even after a kill. It holds
/// between processes and between two stores in one process.
/// </summary>
internal static class LockFile
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(2);

    /// <summary>Makes the file where there is none.</summary>
    public static void Make(string path)
    {
        if (!File.Exists(path))
            TryShared(path)?.Dispose();
    }

    /// <summary>The lock for one alone, or null when somebody has it.</summary>
    public static FileStream? TryAlone(string path) => Try(path, FileAccess.ReadWrite, FileShare.None);

    /// <summary>The lock that many may share, or null when somebody has it alone.</summary>
    public static FileStream? TryShared(string path) => Try(path, FileAccess.Read, FileShare.Read);

    /// <summary>
    /// Tries again until it succeeds or <paramref name="wait"/> has passed; null then. Other processes live in real time, so
    /// this does not go by the clock that is handed in.
    /// </summary>
    public static FileStream? Wait(Func<FileStream?> attempt, TimeSpan wait)
    {
        var start = Stopwatch.GetTimestamp();
        while (true)
        {
            if (attempt() is { } taken)
                return taken;
            if (Stopwatch.GetElapsedTime(start) >= wait)
                return null;
            Thread.Sleep(Pause);
        }
    }

    private static FileStream? Try(string path, FileAccess access, FileShare share)
    {
        try
        {
            NoPipe.At(path);
            return new FileStream(path, FileMode.OpenOrCreate, access, share, bufferSize: 0);
        }
        catch (IOException taken) when (IsTaken(taken))
        {
            return null;
        }
    }

    // EWOULDBLOCK of Linux, of BSD and macOS, and the sharing violation of Windows.
    private static bool IsTaken(IOException e) => e.HResult is 11 or 35 or unchecked((int)0x80070020);
}
