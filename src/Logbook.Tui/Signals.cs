using System.Runtime.InteropServices;

namespace Logbook.Tui;

/// <summary>Signals that ask the screen to end, and the one that says that it goes on after a suspend.</summary>
internal sealed class Signals : IDisposable
{
    private readonly List<PosixSignalRegistration> _registrations = [];
    private int _continued;

    public Signals()
    {
        foreach (var signal in new[] { PosixSignal.SIGTERM, PosixSignal.SIGHUP, PosixSignal.SIGINT, PosixSignal.SIGQUIT })
        {
            _registrations.Add(PosixSignalRegistration.Create(signal, context =>
            {
                context.Cancel = true; // the loop ends in order, and the terminal is given back
                Asked = signal.ToString();
            }));
        }

        if (!OperatingSystem.IsWindows())
        {
            _registrations.Add(PosixSignalRegistration.Create(PosixSignal.SIGCONT, _ => Interlocked.Exchange(ref _continued, 1)));
        }
    }

    /// <summary>The signal that asked the screen to end; null while none did.</summary>
    public string? Asked { get; private set; }

    /// <summary>True once after each suspend.</summary>
    public bool TakeContinued() => Interlocked.Exchange(ref _continued, 0) == 1;

    public void Dispose() => _registrations.ForEach(r => r.Dispose());
}
