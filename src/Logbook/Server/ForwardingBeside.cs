using System.CommandLine;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Storage.LiteDb;
using Logbook.Storage.Postgres;

namespace Logbook;

/// <summary>
/// Forwards in the background while a screen is open. The screen never waits for it: it writes its own journal, and this reads
/// that journal as any other terminal would. While the server is away it tries again now and then, for as long as it takes.
/// </summary>
internal sealed class ForwardingBeside : IDisposable
{
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Leaves = TimeSpan.FromSeconds(2);

    private readonly CancellationTokenSource _stop = new();
    private readonly Thread? _work;
    private volatile string? _trouble;

    private ForwardingBeside(Shell shell, string folder, Desk desk)
    {
        var address = ServerOptions.Address(shell, folder);
        desk.Server = ServerWords.Noted(address, folder, desk, () => _trouble);
        if (address.Ok)
        {
            _work = new Thread(() => Work(shell, folder, new Server(address.Value!))) { IsBackground = true, Name = "forwarding" };
            _work.Start();
        }
    }

    /// <summary>Begins when a server is named; else there is nothing to do, and nothing is said.</summary>
    public static ForwardingBeside? Start(Shell shell, ParseResult parse, Desk desk)
    {
        var folder = OpenSite.Folder(shell, parse);
        return ServerOptions.IsNamed(shell, folder) ? new(shell, folder, desk) : null;
    }

    /// <summary>Ends between two batches; what waits then waits in the journal. A server that hangs does not keep the screen open.</summary>
    public void Dispose()
    {
        _stop.Cancel();
        if (_work is null || _work.Join(Leaves))
        {
            _stop.Dispose();
        }
    }

    private void Work(Shell shell, string folder, Server server)
    {
        using var connected = server;
        using var line = new LiteDbJournal(folder, shell.Terminal, shell.Clock);
        var forwarder = new Forwarder(line, server, ForwardNote.Of(folder, server.Address), shell.Clock);
        do
        {
            try
            {
                var report = forwarder.Run(new LongWork(_ => { }, _stop.Token));
                _trouble = report.Agreement is Agreement.Ahead or Agreement.Differs ? report.Verdict : null;
            }
            catch (JournalException trouble)
            {
                _trouble = trouble.Message;
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
        while (!_stop.Token.WaitHandle.WaitOne(Between));
    }
}
