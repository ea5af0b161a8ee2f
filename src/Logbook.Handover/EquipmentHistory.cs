using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What each piece of equipment did at any moment of a stretch, as far as the journal tells; running when it does not.</summary>
internal sealed class EquipmentHistory
{
    private readonly Dictionary<string, SortedList<(DateTimeOffset Since, long Seq), EquipmentStateChanged>> _changes = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Reads from <paramref name="from"/> on, and further back only for equipment that changed since.</summary>
    public static EquipmentHistory Of(Desk desk, IReadOnlyList<JournalRecord> records, DateTimeOffset begun, DateTimeOffset from)
    {
        var history = new EquipmentHistory();
        foreach (var status in desk.State.Equipment.Values)
        {
            history.Add(status.Seq, new EquipmentStateChanged(status.Equipment, status.State, status.Since, status.Why));
        }

        history.AddAll(records);
        var end = records.Count > 0 ? records.Min(r => r.At) : from;
        for (var days = 2; end > begun && history.AnyUnknownAt(from); days *= 4)
        {
            var start = end.AddDays(-days);
            history.AddAll(desk.Store.Between(start, end));
            end = start;
        }

        return history;
    }

    /// <summary>The change in force at that moment; null when none is known, which counts as running.</summary>
    public EquipmentStateChanged? At(string? equipment, DateTimeOffset at) =>
        equipment is not null && _changes.TryGetValue(equipment, out var changes) ? changes.Values.LastOrDefault(c => c.Since <= at) : null;

    /// <summary>Whether checks apply: it runs, or it is being started, when they matter most.</summary>
    public static bool Runs(string state) => state is "running" or "starting";

    private bool AnyUnknownAt(DateTimeOffset at) => _changes.Values.Any(changes => changes.Keys[0].Since > at);

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

        changes[(change.Since, seq)] = change;
    }
}
