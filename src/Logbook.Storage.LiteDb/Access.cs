using System.Diagnostics;
using Logbook.Journal;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// The files as this process has them open, one thread at a time: for a burst of saves, or to look. While a burst lasts, looks
/// go through it; otherwise through a snapshot.
/// </summary>
internal sealed class Access : IDisposable
{
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(2);

    // Saves without a pause give way now and then, for longer than the others wait between two tries. Other processes live in
    // real time, so this does not go by the clock that is handed in.
    private static readonly TimeSpan LongestTurn = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan GivingWay = TimeSpan.FromMilliseconds(20);

    private readonly JournalFolder _folder;
    private readonly string _terminal;
    private readonly TimeSpan _wait;
    private readonly ITimer _idle;
    private readonly Snapshot _snapshot;
    private readonly Lock _turn = new();
    private Burst? _burst;
    private long _turnBegan;
    private Head _seen = Head.Empty;
    private bool _disposed;

    public Access(JournalFolder folder, string terminal, TimeProvider clock, TimeSpan wait)
    {
        _folder = folder;
        _terminal = terminal;
        _wait = wait;
        _snapshot = new Snapshot(folder);
        _idle = clock.CreateTimer(_ => LetGo(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>What could not be done after the last save, in words: the save itself is safe. Null when all went well.</summary>
    public string? Warning { get; private set; }

    public JournalRecord Append(RecordDraft draft)
    {
        lock (_turn)
        {
            ObjectDisposedException.ThrowIf(_disposed, this);
            _snapshot.Close();
            GiveWay();
            try
            {
                var burst = _burst ??= Begin();
                var record = StoreFault.Guard("the disk did not take the record", () => burst.Append(draft));
                _seen = burst.Head;
                Afterwards(burst.CheckpointWhenDue);
                return record;
            }
            finally
            {
                if (_burst is { Failed: true })
                    EndBurst();
                _idle.Change(Idle, Timeout.InfiniteTimeSpan);
            }
        }
    }

    /// <summary>Runs <paramref name="look"/> on the records, or returns <paramref name="whenEmpty"/> when there is no journal yet.</summary>
    /// <exception cref="JournalException">The files could not be read.</exception>
    public T Look<T>(Func<View, T> look, T whenEmpty)
    {
        lock (_turn)
        {
            if (_burst is not null)
                return StoreFault.Guard("the journal cannot be read", () => look(_burst.View));
            _idle.Change(Idle, Timeout.InfiniteTimeSpan);
            return StoreFault.Guard("the journal cannot be read", () => _snapshot.Look(look, whenEmpty));
        }
    }

    /// <summary>As <see cref="Look"/>, but at what is on the disk, past everything that is kept in memory.</summary>
    public T LookAtDisk<T>(Func<View, T> look, T whenEmpty) => StoreFault.Guard("the journal cannot be read", () =>
    {
        using var fresh = new Snapshot(_folder);
        return fresh.Look(look, whenEmpty);
    });

    public void Dispose()
    {
        _idle.Dispose();
        _disposed = true;
        LetGo();
    }

    private Burst Begin()
    {
        var burst = StoreFault.Guard(
            "the journal cannot be opened for writing; nothing was saved", () => Burst.Begin(_folder, _terminal, _wait, _seen));
        _turnBegan = Stopwatch.GetTimestamp();
        return burst;
    }

    private void GiveWay()
    {
        if (_burst is null || Stopwatch.GetElapsedTime(_turnBegan) < LongestTurn)
            return;
        LetGo();
        Thread.Sleep(GivingWay);
    }

    private void LetGo()
    {
        lock (_turn)
        {
            try
            {
                if (_burst is not null)
                    Afterwards(_burst.NoteHead);
            }
            finally
            {
                EndBurst();
                _snapshot.Close();
            }
        }
    }

    private void EndBurst()
    {
        _burst?.Dispose();
        _burst = null;
    }

    // What follows a save must not make a failure of it. The next burst tries again; until then the log keeps everything.
    private void Afterwards(Action work)
    {
        try
        {
            StoreFault.Guard("the journal is safe, but could not be tidied up", () =>
            {
                work();
                return true;
            });
            Warning = null;
        }
        catch (JournalException trouble)
        {
            Warning = trouble.Message;
        }
    }
}
