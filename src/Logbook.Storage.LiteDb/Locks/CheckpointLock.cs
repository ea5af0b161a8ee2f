namespace Logbook.Storage.LiteDb.Locks;

/// <summary>
/// Keeps readers and checkpoints apart: the data file changes during a checkpoint only. Both pass the gate first; who waits
/// for a checkpoint keeps the gate, so new readers queue behind it for the few milliseconds that it takes.
/// </summary>
internal static class CheckpointLock
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    /// <summary>Held while a reader has the files open; null when a checkpoint took unreasonably long.</summary>
    public static FileStream? Shared(JournalFolder folder)
    {
        using var gate = LockFile.Wait(() => LockFile.TryShared(folder.Gate), 2 * Patience);
        return gate is null ? null : LockFile.Wait(() => LockFile.TryShared(folder.CheckpointLock), 2 * Patience);
    }

    /// <summary>Held during a checkpoint; null when readers did not leave in time: the log may grow until the next try.</summary>
    public static FileStream? Alone(JournalFolder folder)
    {
        using var gate = LockFile.Wait(() => LockFile.TryAlone(folder.Gate), Patience);
        return gate is null ? null : LockFile.Wait(() => LockFile.TryAlone(folder.CheckpointLock), Patience);
    }
}
