using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What each piece of equipment did at any moment of a stretch, as far as the journal tells; running when it does not.</summary>
internal sealed class EquipmentHistory
{
    private readonly Dictionary<string, SortedList<(DateTimeOffset Since, long Seq), Change>> _changes = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="records">The records of the stretch.</param>
    /// <param name="from">Its begin: what stood then is taken from the state of that time.</param>
    public static EquipmentHistory Of(Desk desk, IReadOnlyList<JournalRecord> records, DateTimeOffset from)
    {
        var history = new EquipmentHistory();
        history.AddAll(desk.State);
        history.AddAll(records);
        if (history.AnyUnknownAt(from))
        {
            history.AddAll(JournalSpan.StateAt(desk, from));
        }

        return history;
    }

    /// <summary>The change in force at that moment; null when none is known, which counts as running.</summary>
    public EquipmentStateChanged? At(string? equipment, DateTimeOffset at) => At(equipment, at, _ => true)?.Body;

    /// <param name="counts">Whether the record of that number counts.</param>
    public Change? At(string? equipment, DateTimeOffset at, Func<long, bool> counts)
    {
        if (equipment is null || !_changes.TryGetValue(equipment, out var changes))
        {
            return null;
        }

        var last = LastSince(changes.Keys, at);
        while (last >= 0 && !counts(changes.Keys[last].Seq))
        {
            last--;
        }

        return last >= 0 ? changes.Values[last] : null;
    }

    /// <summary>Place of the last change by then; -1 when there is none. Years have thousands of them.</summary>
    private static int LastSince(IList<(DateTimeOffset Since, long Seq)> keys, DateTimeOffset at)
    {
        var (low, high) = (0, keys.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = keys[middle].Since <= at ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }

    /// <summary>Whether checks apply: it runs, or it is being started, when they matter most.</summary>
    public static bool Runs(string state) => state is "running" or "starting";

    private bool AnyUnknownAt(DateTimeOffset at) => _changes.Values.Any(changes => changes.Keys[0].Since > at);

    private void AddAll(State state)
    {
        foreach (var status in state.Equipment.Values)
        {
            Add(status.Seq, new EquipmentStateChanged(status.Equipment, status.State, status.Since, status.Why));
        }
    }

    private void AddAll(IEnumerable<JournalRecord> records)
    {
        foreach (var record in records)
        {
            if (record.Body is EquipmentStateChanged change)
            {
                Add(record.Seq, change);
            }
        }
    }

    private void Add(long seq, EquipmentStateChanged change)
    {
        if (!_changes.TryGetValue(change.Equipment, out var changes))
        {
            _changes[change.Equipment] = changes = [];
        }

        changes[(change.Since, seq)] = new Change(seq, change);
    }

    /// <param name="Seq">The record that tells of it.</param>
    public sealed record Change(long Seq, EquipmentStateChanged Body);
}
