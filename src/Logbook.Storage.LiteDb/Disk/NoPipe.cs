namespace Logbook.Storage.LiteDb.Disk;

/// <summary>Looks, before a file of the journal is opened, whether it is one: a pipe would be waited for without end.</summary>
internal static class NoPipe
{
    /// <exception cref="IOException">Something else than a file has this name.</exception>
    public static void At(string path)
    {
        if (OperatingSystem.IsWindows())
            return; // its pipes have names of their own
        var handle = CLibrary.Open(path, CLibrary.ReadOnly | CLibrary.WithoutWaiting);
        if (handle < 0)
            return; // absent or denied: whoever opens it is told so
        var hasPlaces = CLibrary.Seek(handle, 0, CLibrary.FromHere) >= 0;
        _ = CLibrary.Close(handle);
        if (!hasPlaces)
            throw new IOException($"{path} is a pipe or a device, not a file of the journal: move it away, then restore the file from a backup if it is missing");
    }

    /// <summary>The whole file.</summary>
    /// <exception cref="IOException">It cannot be read, or something else than a file has this name.</exception>
    public static byte[] Bytes(string path)
    {
        At(path);
        return File.ReadAllBytes(path);
    }
}
