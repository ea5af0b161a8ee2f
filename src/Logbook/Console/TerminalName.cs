namespace Logbook;

/// <summary>host:tty, as it stands in every record.</summary>
internal static class TerminalName
{
    public static string OfProcess()
    {
        var tty = File.Exists("/proc/self/fd/0") ? new FileInfo("/proc/self/fd/0").LinkTarget : null;
        var name = tty is not null && tty.StartsWith("/dev/", StringComparison.Ordinal) && !tty.EndsWith("null", StringComparison.Ordinal)
            ? tty["/dev/".Length..]
            : "none";
        return $"{Environment.MachineName}:{name}";
    }
}
