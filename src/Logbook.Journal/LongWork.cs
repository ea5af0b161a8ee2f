namespace Logbook.Journal;

/// <summary>Work that takes long enough for a person to wonder: it says how far it is, and ends early when it is told to.</summary>
/// <param name="reached">Takes the number of records done.</param>
/// <param name="stop">Asked at each record: whoever works leaves nothing half done.</param>
public sealed class LongWork(Action<long> reached, CancellationToken stop)
{
    /// <summary>Nobody watches it and nobody stops it.</summary>
    public static readonly LongWork Unwatched = new(_ => { }, CancellationToken.None);

    /// <exception cref="OperationCanceledException">It is to stop.</exception>
    public void Reached(long records)
    {
        stop.ThrowIfCancellationRequested();
        reached(records);
    }
}
