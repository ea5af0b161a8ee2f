using Logbook.Journal;
using Logbook.Storage.LiteDb.Locks;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// The journal as it was at one moment, opened beside whoever writes and closed again soon: LiteDB's cache only grows while a
/// database is open, and a checkpoint waits for readers.
/// </summary>
internal sealed class Snapshot : IDisposable
{
    private readonly FileStream _shared;
    private readonly DurableDatabase _database;

    private Snapshot(FileStream shared, DurableDatabase database)
    {
        _shared = shared;
        _database = database;
        Records = new RecordTable(database.Engine);
    }

    public RecordTable Records { get; }

    /// <summary>Where the log is damaged; null when it is sound.</summary>
    public string? Damage => _database.Damage;

    /// <summary>Null when no journal has been kept here yet. Creates nothing.</summary>
    public static Snapshot? Open(JournalFolder folder)
    {
        if (!folder.HasJournal())
            return null;
        var shared = CheckpointLock.Shared(folder)
            ?? throw new JournalException(JournalTrouble.Busy, "the journal is being written out by another process for unreasonably long; try again");
        try
        {
            return new(shared, DurableDatabase.ForReading(folder.OpenData(toWrite: false), folder.OpenLog(toWrite: false)));
        }
        catch
        {
            shared.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        _database.Dispose();
        _shared.Dispose();
    }
}
