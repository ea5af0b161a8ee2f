using Logbook.Journal;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Locks;

/// <summary>The right to write, held for a burst of saves. Dies with its process.</summary>
internal sealed class OwnerLock : IDisposable
{
    private readonly FileStream _lock;

    private OwnerLock(FileStream taken) => _lock = taken;

    /// <exception cref="JournalException">Somebody else kept it all that time; the message says who.</exception>
    public static OwnerLock Take(JournalFolder folder, string terminal, TimeSpan wait)
    {
        var taken = LockFile.Wait(() => LockFile.TryAlone(folder.OwnerLock), wait)
            ?? throw new JournalException(JournalTrouble.Busy, $"the journal is being written by {NameOf(folder)}; nothing was saved; try again");
        try
        {
            NoPipe.At(folder.OwnerName);
            File.WriteAllText(folder.OwnerName, FormattableString.Invariant($"{terminal}, process {Environment.ProcessId}"));
            return new OwnerLock(taken);
        }
        catch
        {
            taken.Dispose();
            throw;
        }
    }

    public void Dispose() => _lock.Dispose();

    // It may just have been taken by one who has not written the name yet.
    private static string NameOf(JournalFolder folder)
    {
        NoPipe.At(folder.OwnerName);
        var name = File.Exists(folder.OwnerName) ? File.ReadAllText(folder.OwnerName) : "";
        return name.Length > 0 ? name : "another terminal";
    }
}
