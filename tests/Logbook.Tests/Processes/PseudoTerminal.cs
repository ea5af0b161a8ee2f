using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Logbook.Tests;

/// <summary>The two ends of a terminal without glass (POSIX pseudo-terminal): a program writes to one, a test reads the other.</summary>
internal sealed class PseudoTerminal : IDisposable
{
    private const int ReadWrite = 2;
    private const int NotOurs = 0x100; // O_NOCTTY of Linux: it does not become the terminal of the tests themselves

    private readonly SafeFileHandle _near;
    private readonly FileStream _shown;
    private readonly SafeFileHandle _far; // held open, so that the near end is not hung up when the program ends

    public PseudoTerminal()
    {
        var handle = Open(ReadWrite | NotOurs);
        if (handle < 0 || Grant(handle) != 0 || Unlock(handle) != 0)
        {
            throw new IOException("no pseudo-terminal", Marshal.GetLastPInvokeError());
        }

        Name = Marshal.PtrToStringUTF8(NameOf(handle))!;
        _near = new SafeFileHandle(handle, ownsHandle: true);
        _shown = new FileStream(_near, FileAccess.Read, bufferSize: 0);
        _far = File.OpenHandle(Name, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
    }

    /// <summary>Path of the far end.</summary>
    public string Name { get; }

    /// <summary>Reads until the text stands there, and returns all that came up to then.</summary>
    public string ReadUntil(string text)
    {
        var shown = new StringBuilder();
        var buffer = new byte[4096];
        while (!shown.ToString().Contains(text, StringComparison.Ordinal))
        {
            var count = _shown.Read(buffer);
            shown.Append(Encoding.UTF8.GetString(buffer, 0, count));
        }

        return shown.ToString();
    }

    public void Dispose()
    {
        _far.Dispose();
        _shown.Dispose();
        _near.Dispose();
    }

    [DllImport("libc", EntryPoint = "posix_openpt", SetLastError = true)]
    private static extern int Open(int flags);

    [DllImport("libc", EntryPoint = "grantpt", SetLastError = true)]
    private static extern int Grant(int handle);

    [DllImport("libc", EntryPoint = "unlockpt", SetLastError = true)]
    private static extern int Unlock(int handle);

    [DllImport("libc", EntryPoint = "ptsname", SetLastError = true)]
    private static extern IntPtr NameOf(int handle);
}
