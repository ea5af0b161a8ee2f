using System.Globalization;
using System.Runtime.InteropServices;
using Logbook.Journal;

namespace Logbook;

/// <summary>
/// How far long work is, in one line that is written over and over when a person watches. While it runs, Ctrl+C and a request
/// to end do not end the process but the work, at the next place where nothing is half done.
/// </summary>
internal sealed class Progress : IDisposable
{
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(200);

    private readonly Shell _shell;
    private readonly string _what;
    private readonly long _of;
    private readonly CancellationTokenSource _stop = new();
    private readonly List<PosixSignalRegistration> _signals;
    private long _said;
    private string _line = "";

    private Progress(Shell shell, string what, long of)
    {
        (_shell, _what, _of) = (shell, what, of);
        _said = shell.Clock.GetTimestamp();
        _signals = [Take(PosixSignal.SIGINT), Take(PosixSignal.SIGTERM), Take(PosixSignal.SIGHUP)];
        Work = new LongWork(Reached, _stop.Token);
    }

    public LongWork Work { get; }

    /// <param name="what">What goes on: <c>verifying</c>.</param>
    /// <param name="of">How many there are, as far as is known.</param>
    public static Progress Of(Shell shell, string what, long of) => new(shell, what, of);

    public void Dispose()
    {
        _signals.ForEach(signal => signal.Dispose());
        _stop.Dispose();
        Write("");
    }

    private PosixSignalRegistration Take(PosixSignal signal) => PosixSignalRegistration.Create(signal, taken =>
    {
        taken.Cancel = true;
        _stop.Cancel();
    });

    private void Reached(long count)
    {
        if (!_shell.Watched || _shell.Clock.GetElapsedTime(_said) < Between)
        {
            return;
        }

        _said = _shell.Clock.GetTimestamp();
        Write(string.Create(CultureInfo.InvariantCulture, $"{_what}: {count:N0}{(_of > 0 ? $" of {Math.Max(count, _of):N0}" : "")}   Ctrl+C stops"));
    }

    private void Write(string line)
    {
        if (_line.Length > 0 || line.Length > 0)
        {
            _shell.Error.Write("\r" + line.PadRight(_line.Length) + (line.Length == 0 ? "\r" : ""));
            _line = line;
        }
    }
}
