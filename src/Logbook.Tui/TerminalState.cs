using System.Runtime.InteropServices;
using Logbook.Plant;

namespace Logbook.Tui;

/// <summary>The terminal as it was before the screen: put back when the toolkit could not do it itself.</summary>
internal sealed class TerminalState : IDisposable
{
    // Mouse reports off, bracketed paste off, keyboard protocol off, plain text, main screen, cursor shown.
    private static readonly byte[] Plain = "\e[?1003l\e[?1015l\e[?1006l\e[?2004l\e[<u\e[0m\e[?1049l\e[?25h"u8.ToArray();

    private readonly byte[]? _modes;
    private byte[]? _screen;
    private int _armed = 1;

    public TerminalState()
    {
        _modes = Modes();
        AppDomain.CurrentDomain.ProcessExit += Restore;
        AppDomain.CurrentDomain.UnhandledException += Restore;
    }

    /// <summary>Nothing can be read from the terminal or shown on it any more. A hang-up need not come with its signal.</summary>
    public bool IsGone => _modes is not null && GetModes(0, new byte[_modes.Length]) != 0;

    /// <summary>The screen has the terminal as it needs it.</summary>
    public void IsDrawn() => _screen = Modes();

    /// <summary>A shell that had the terminal meanwhile has left it in its own way.</summary>
    public void TakeBack()
    {
        if (_screen is not null)
        {
            _ = SetModes(0, 0, _screen);
        }
    }

    /// <summary>The toolkit has put everything back.</summary>
    public void IsRestored() => Interlocked.Exchange(ref _armed, 0);

    public void Dispose()
    {
        Restore(this, EventArgs.Empty);
        AppDomain.CurrentDomain.ProcessExit -= Restore;
        AppDomain.CurrentDomain.UnhandledException -= Restore;
    }

    private static byte[]? Modes()
    {
        var modes = new byte[256];
        return OperatingSystem.IsLinux() && GetModes(0, modes) == 0 ? modes : null;
    }

    private void Restore(object? sender, EventArgs args)
    {
        if (Interlocked.Exchange(ref _armed, 0) == 0)
        {
            return;
        }

        var gone = OnDisk.Refusal(() =>
        {
            using var terminal = new FileStream("/dev/tty", FileMode.Open, FileAccess.Write);
            terminal.Write(Plain);
        });
        if (gone is null && _modes is not null)
        {
            _ = SetModes(0, 0, _modes);
        }
    }

    [DllImport("libc", EntryPoint = "tcgetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int GetModes(int file, byte[] modes);

    [DllImport("libc", EntryPoint = "tcsetattr")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetModes(int file, int when, byte[] modes);
}
