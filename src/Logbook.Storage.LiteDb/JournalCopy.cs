using Logbook.Journal;
using Logbook.Storage.LiteDb.Locks;

namespace Logbook.Storage.LiteDb;

/// <summary>
/// A whole journal made of records that come from elsewhere: a backup, a restore. It is put together aside, read again and
/// compared, and takes its place in one step; whatever happens before that step, nothing of it is left.
/// </summary>
public static class JournalCopy
{
    private const int RecordsAtOnce = 256;

    /// <summary>A journal in a site folder of its own, which must not hold one yet.</summary>
    /// <param name="records">The exact bytes of every record, in order.</param>
    /// <param name="noted">A head that was noted outside of them: the records must pass through it.</param>
    /// <returns>What the records turned out to be; when they are not sound, nothing was made.</returns>
    /// <exception cref="JournalException">There is a journal already, or the disk did not take it.</exception>
    public static ChainCheck Make(IEnumerable<ReadOnlyMemory<byte>> records, Head? noted, string siteFolder, string terminal, TimeSpan wait, LongWork work) =>
        StoreFault.Guard("the journal could not be put in place; nothing was changed", () =>
        {
            var folder = JournalFolder.Of(siteFolder);
            folder.Create();
            using var owner = OwnerLock.Take(folder, terminal, wait);
            if (folder.HasJournal() && HeadOf(folder).Seq > 0)
                throw new JournalException(JournalTrouble.Unreadable, $"{folder.Data} is there already: a journal is restored into an empty folder only; nothing was changed");
            return Place(records, noted, folder, work);
        });

    private static ChainCheck Place(IEnumerable<ReadOnlyMemory<byte>> records, Head? noted, JournalFolder folder, LongWork work)
    {
        var draft = folder.Unfinished();
        draft.DropAll(); // what a kill left
        draft.Create();
        try
        {
            var check = Write(records, noted, draft, work);
            if (!check.Ok || check.Records == 0)
                return check;
            MustBeThere(check, draft);
            folder.TakeData(draft);
            folder.NoteAnchor(check.Head);
            return check;
        }
        finally
        {
            draft.DropAll();
        }
    }

    private static ChainCheck Write(IEnumerable<ReadOnlyMemory<byte>> records, Head? noted, JournalFolder draft, LongWork work)
    {
        draft.CreateJournal(() => DurableDatabase.NewDataFile(RecordTable.Create));
        using var database = DurableDatabase.ForWriting(draft.OpenData(toWrite: true), draft.OpenLog(toWrite: true));
        var table = new RecordTable(database.Engine);
        var check = Chain.Verify(InTransactions(records, database), noted, record =>
        {
            work.Reached(record.Seq);
            table.Insert(record);
            return null;
        });
        return check;
    }

    private static IEnumerable<ReadOnlyMemory<byte>> InTransactions(IEnumerable<ReadOnlyMemory<byte>> records, DurableDatabase database)
    {
        foreach (var some in records.Chunk(RecordsAtOnce))
        {
            database.Engine.BeginTrans();
            foreach (var bytes in some)
                yield return bytes;
            database.Engine.Commit();
            database.Save();
            database.Checkpoint();
        }
    }

    private static Head HeadOf(JournalFolder folder)
    {
        using var journal = new LiteDbJournal(folder);
        return journal.Head;
    }

    private static void MustBeThere(ChainCheck written, JournalFolder draft)
    {
        using var copy = new LiteDbJournal(draft);
        var read = copy.Verify();
        if (!read.Ok || read.Head != written.Head)
            throw new JournalException(JournalTrouble.Damaged, $"the disk does not give back what was written: {read.Why ?? "another head"}; nothing was changed");
    }
}
