using Logbook.Journal;
using Logbook.Storage.LiteDb.Locks;

namespace Logbook.Storage.LiteDb;

/// <summary>A run of saves by one owner: the lock is held, the database is open, the chain's end is known.</summary>
internal sealed class Burst : IDisposable
{
    private const int TailChecked = 16;

    private readonly JournalFolder _folder;
    private readonly OwnerLock _owner;
    private readonly DurableDatabase _database;
    private string? _chain;
    private Head? _noted;
    private long _checkpointAt;

    private Burst(JournalFolder folder, OwnerLock owner, DurableDatabase database, Head seen)
    {
        _folder = folder;
        _owner = owner;
        _database = database;
        _checkpointAt = folder.LogLimit;
        View = new View(new RecordTable(database.Engine), Damage: null);
        _noted = folder.ReadAnchor();
        Head = CheckedEnd();
        if (Head.Seq == 0)
            folder.SyncNames(); // whoever made the files may have failed at just that
        MustReach(_noted, "was noted beside the journal");
        MustReach(seen, "was there before");
    }

    public Head Head { get; private set; }

    public View View { get; }

    /// <summary>True when the files could not be brought forward: this burst takes no more saves.</summary>
    public bool Failed { get; private set; }

    /// <param name="seen">The furthest end that this process has seen: it cannot have moved back.</param>
    /// <exception cref="JournalException">Somebody else writes, or the journal is not sound enough to write on.</exception>
    public static Burst Begin(JournalFolder folder, string terminal, TimeSpan wait, Head seen)
    {
        folder.Create();
        var owner = OwnerLock.Take(folder, terminal, wait);
        DurableDatabase? database = null;
        try
        {
            folder.CreateJournal(() => DurableDatabase.NewDataFile(RecordTable.Create));
            database = DurableDatabase.ForWriting(folder.OpenData(toWrite: true), folder.OpenLog(toWrite: true), folder.LogRoom);
            return database.Damage is { } damage
                ? throw new JournalException(JournalTrouble.Damaged, $"{damage}; nothing was saved or cut away: export what is sound")
                : new Burst(folder, owner, database, seen);
        }
        catch
        {
            database?.Dispose();
            owner.Dispose();
            throw;
        }
    }

    /// <summary>Returns when the record is on the disk.</summary>
    public JournalRecord Append(RecordDraft draft)
    {
        if (_chain is not null)
            Chain.MustMatch(_chain, draft);
        var record = JournalRecord.Seal(draft, Head);
        MustStillBeThere();
        Failed = true; // until it is known to be on the disk
        View.Records.Insert(record);
        _database.Save();
        Failed = false;
        Head = Head.Of(record);
        _chain = record.Chain;
        return record;
    }

    /// <summary>Brings the log into the data file when it has grown enough, and notes the head outside the store.</summary>
    public void CheckpointWhenDue()
    {
        if (_database.LogLength < _checkpointAt)
            return;
        using var alone = CheckpointLock.Alone(_folder);
        if (alone is null)
        {
            // Readers stay at work; the next saves are not to wait for them as well.
            _checkpointAt = _database.LogLength + _folder.LogLimit;
            return;
        }

        Failed = true;
        _database.Checkpoint();
        Failed = false;
        _checkpointAt = _folder.LogLimit;
        NoteHead();
    }

    public void NoteHead()
    {
        if (Failed || Head == _noted || Head.Seq == 0)
            return;
        _folder.NoteAnchor(Head);
        _noted = Head;
    }

    public void Dispose()
    {
        _database.Dispose();
        _owner.Dispose();
    }

    private Head CheckedEnd()
    {
        var last = View.Records.Last();
        if (last is null)
            return Head.Empty;
        var end = JournalRecord.Parse(last.Bytes);
        _chain = end.Chain;
        JournalRecord? before = null;
        foreach (var stored in View.Records.From(Math.Max(1, end.Seq - TailChecked), TailChecked + 1))
        {
            var record = JournalRecord.Parse(stored.Bytes);
            if (before is not null && Chain.WhyNot(record, Head.Of(before)) is { } why)
                throw Damaged(why);
            before = record;
        }

        return Head.Of(end);
    }

    // A sound end that lies before one that is known means that acknowledged records are gone.
    private void MustReach(Head? known, string how)
    {
        if (known is null || known.Seq == 0)
            return;
        if (Head.Seq < known.Seq)
            throw Damaged($"the journal ends at record {Head.Seq}, but {known.Seq} {how}");
        if (View.Records.Find(known.Seq) is not { } there || JournalRecord.HashOf(there.Bytes) != known.Hash)
            throw Damaged($"record {known.Seq} is not the one that {how}");
    }

    // A file that was deleted or replaced while it is open would take saves that nobody ever finds again.
    private void MustStillBeThere()
    {
        if (!_folder.StillHas(_database))
            throw Damaged("the journal's files were deleted or changed by another program");
    }

    private static JournalException Damaged(string why) => new(JournalTrouble.Damaged, $"{why}; nothing was saved: export what is sound");
}
