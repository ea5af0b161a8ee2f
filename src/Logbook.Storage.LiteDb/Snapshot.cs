using Logbook.Journal;
using Logbook.Storage.LiteDb.Locks;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// A look at the journal beside whoever writes. The database stays open between two looks as long as nobody saved anything;
/// the lock that keeps checkpoints away is held during a look only.
/// </summary>
internal sealed class Snapshot(JournalFolder folder) : IDisposable
{
    private DurableDatabase? _database;

    /// <summary>Runs <paramref name="look"/>, or returns <paramref name="whenEmpty"/> when no journal has been kept here yet. Creates nothing.</summary>
    public T Look<T>(Func<View, T> look, T whenEmpty)
    {
        if (!folder.HasJournal())
            return whenEmpty;
        using var shared = CheckpointLock.Shared(folder)
            ?? throw new JournalException(JournalTrouble.Busy, "another process has been tidying up the journal for unreasonably long; try again");
        if (_database is null || !folder.LogEndsAt(_database.LogEnd))
            Open();
        return look(new(new RecordTable(_database!.Engine), _database.Damage));
    }

    /// <summary>Lets go of the files and of what LiteDB keeps of them in memory, which otherwise only grows.</summary>
    public void Close()
    {
        _database?.Dispose();
        _database = null;
    }

    public void Dispose() => Close();

    private void Open()
    {
        Close();
        _database = DurableDatabase.ForReading(folder.OpenData(toWrite: false), folder.OpenLog(toWrite: false));
    }
}
