using Logbook.Storage.LiteDb;

namespace Logbook;

/// <summary>A journal whose newest records are gone looks like a calm shift: whoever reads it is told first.</summary>
internal static class ShortEnd
{
    /// <summary>Compares the journal's end with the one noted beside it. False, and a warning, when records are missing.</summary>
    public static bool Warn(Shell shell, LiteDbJournal journal)
    {
        var noted = journal.Anchor(); // before the head: another terminal may save in between
        var head = journal.Head;
        if (noted is null && head.Seq > 0)
        {
            shell.Error.WriteLine("WARNING: the end of the journal is noted nowhere beside it (journal/anchor is missing): a lost end would not be noticed. Compare with the last printed note.");
        }

        if (noted is null || noted.Seq <= head.Seq)
        {
            return true;
        }

        shell.Error.WriteLine($"WARNING: the journal ends at record {head.Seq}, but {noted.Seq} records had been noted: the newest are missing, and what can hurt may be among them. Do not rely on what follows; see: logbook verify");
        return false;
    }
}
