using Logbook.Journal;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// A line's journal on one local disk. Several terminals, processes and users may hold it open at once: writing is owned for a
/// burst of saves at a time, reading is a short look at a consistent moment. Opening it does nothing to the disk.
/// </summary>
public sealed class LiteDbJournal : IJournalStore
{
    /// <summary>How long a save waits for another writer unless said otherwise.</summary>
    public static readonly TimeSpan UsualWait = TimeSpan.FromSeconds(5);

    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(2);

    private readonly JournalFolder _folder;
    private readonly JournalReader _reader;
    private readonly string _terminal;
    private readonly TimeSpan _wait;
    private readonly ITimer _idle;
    private readonly Lock _turn = new();
    private Burst? _burst;
    private Head _seen = Head.Empty;
    private bool _disposed;

    /// <param name="siteFolder">The site's folder; the journal is its <c>journal/</c>, made at the first save.</param>
    /// <param name="terminal">host:tty, for those who have to wait for this one.</param>
    /// <param name="clock">When a burst of saves is over.</param>
    /// <param name="wait">How long a save waits for another writer.</param>
    public LiteDbJournal(string siteFolder, string terminal, TimeProvider clock, TimeSpan? wait = null)
        : this(siteFolder, terminal, clock, wait, new LocalDisk())
    {
    }

    internal LiteDbJournal(string siteFolder, string terminal, TimeProvider clock, TimeSpan? wait, IDisk disk)
    {
        _folder = new JournalFolder(Path.Combine(Path.GetFullPath(siteFolder), "journal"), disk);
        _reader = new JournalReader(_folder);
        _terminal = terminal;
        _wait = wait ?? UsualWait;
        _idle = clock.CreateTimer(_ => EndBurst(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    public Head Head
    {
        get
        {
            lock (_turn)
            {
                if (_burst is not null)
                    return _burst.Head;
            }

            return _reader.Head;
        }
    }

    /// <summary>What could not be done after the last save, in words: the save itself is safe. Null when all went well.</summary>
    public string? Warning { get; private set; }

    public JournalRecord Append(RecordDraft draft)
    {
        lock (_turn)
        {
            ObjectDisposedException.ThrowIf(_disposed, this);
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
                    Drop();
                _idle.Change(Idle, Timeout.InfiniteTimeSpan);
            }
        }
    }

    public IEnumerable<JournalRecord> Read(long fromSeq = 1) => _reader.Read(fromSeq);

    public IEnumerable<ReadOnlyMemory<byte>> Bytes(long fromSeq = 1) => _reader.Bytes(fromSeq);

    public ChainCheck Verify() => _reader.Verify();

    public IEnumerable<JournalRecord> Between(DateTimeOffset from, DateTimeOffset to) => _reader.Between(from, to);

    public IReadOnlyList<SeriesValue> Series(string point, DateTimeOffset from, DateTimeOffset to) => _reader.Series(point, from, to);

    public void Dispose()
    {
        _idle.Dispose();
        _disposed = true;
        EndBurst();
    }

    private Burst Begin() => StoreFault.Guard(
        "the journal cannot be opened for writing; nothing was saved", () => Burst.Begin(_folder, _terminal, _wait, _seen));

    private void EndBurst()
    {
        lock (_turn)
        {
            if (_burst is null)
                return;
            Afterwards(_burst.NoteHead);
            Drop();
        }
    }

    private void Drop()
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
