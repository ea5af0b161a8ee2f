namespace Logbook.Journal;

/// <summary>From a journal to the state that follows from it. Begins at a state that was kept, and offers new ones to keep on the way.</summary>
public static class Replay
{
    // What a replay from a kept state reads at most: a few hundredths of a second.
    private const int KeepEvery = 256;

    /// <summary>The state after everything that is in the journal now.</summary>
    /// <param name="state">Where to begin: what the caller knows already.</param>
    public static State Forward(IJournalStore store, State state) =>
        From(store, state.Head.Seq == 0 ? store.Snapshot() : state, _ => true);

    /// <summary>The state after record <paramref name="seq"/>, and after none that came later.</summary>
    public static State UpTo(IJournalStore store, long seq) => From(store, store.Snapshot(seq), record => record.Seq <= seq);

    /// <summary>The state after record <paramref name="seq"/> from the records alone, whatever was kept beside them. Reads the whole journal.</summary>
    public static State FromRecords(IJournalStore store, long seq) =>
        store.Read().TakeWhile(record => record.Seq <= seq).Aggregate(State.Empty, (state, record) => state.Apply(record));

    /// <summary>The state as it was known at <paramref name="moment"/>: up to the first record that was typed later.</summary>
    public static State AsOf(IJournalStore store, DateTimeOffset moment) =>
        From(store, SnapshotAsOf(store, moment, long.MaxValue), record => record.Entered <= moment);

    /// <summary>The newest state kept that was known at <paramref name="moment"/>.</summary>
    public static State SnapshotAsOf(IJournalStore store, DateTimeOffset moment, long upTo)
    {
        var kept = store.Snapshot(upTo);
        while (kept.LatestEntered > moment)
            kept = store.Snapshot(kept.Head.Seq - 1);
        return kept;
    }

    /// <summary>Lets the store keep the state when it is time for one.</summary>
    public static State KeptNowAndThen(this State state, IJournalStore store)
    {
        if (state.Head.Seq % KeepEvery == 0)
            store.Keep(state);
        return state;
    }

    private static State From(IJournalStore store, State state, Func<JournalRecord, bool> counts) =>
        store.Read(state.Head.Seq + 1).TakeWhile(counts).Aggregate(state, (s, record) => s.Apply(record).KeptNowAndThen(store));
}
