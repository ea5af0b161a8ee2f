using Logbook.Journal;

namespace Logbook.Checks.Examining;

/// <summary>
/// When equipment was not running and when the line was upset: then nothing is compared. Washing, standing by, starting: only
/// what runs as usual is a witness.
/// </summary>
internal sealed class Standstill
{
    private const string Runs = "running";

    private readonly Dictionary<string, List<(DateTimeOffset Since, long Seq, string State)>> _changes = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<(DateTimeOffset From, DateTimeOffset? To)> _upsets = [];

    /// <param name="state">What is known at the end.</param>
    public Standstill(State state)
    {
        foreach (var status in state.Equipment.Values)
        {
            Add(status.Equipment, (status.Since, status.Seq, status.State));
        }

        if (state.Upset is { } upset)
        {
            _upsets.Add((upset.Began, null));
        }
    }

    public void Take(JournalRecord record)
    {
        switch (record.Body)
        {
            case EquipmentStateChanged change:
                Add(change.Equipment, (change.Since, record.Seq, change.State));
                break;
            case UpsetDeclared upset:
                _upsets.RemoveAll(u => u.From == upset.Began);
                _upsets.Add((upset.Began, upset.Ended));
                break;
        }
    }

    public bool Upset(DateTimeOffset at) => _upsets.Exists(u => at >= u.From && (u.To is not { } end || at < end));

    /// <summary>What came before the first known change is read off it: who starts something had it standing.</summary>
    public bool Running(string? equipment, DateTimeOffset at) => Is(equipment, at, state => state == Runs);

    /// <summary>Runs or is being started.</summary>
    public bool AtWork(string? equipment, DateTimeOffset at) => Is(equipment, at, EquipmentStates.IsAtWork);

    private bool Is(string? equipment, DateTimeOffset at, Func<string, bool> so)
    {
        if (equipment is null || !_changes.TryGetValue(equipment, out var changes))
        {
            return true;
        }

        var last = changes.FindLastIndex(c => c.Since <= at);
        return last >= 0 ? so(changes[last].State) : !so(changes[0].State);
    }

    private void Add(string equipment, (DateTimeOffset Since, long Seq, string State) change)
    {
        if (!_changes.TryGetValue(equipment, out var changes))
        {
            _changes[equipment] = changes = [];
        }

        if (!changes.Exists(c => c.Seq == change.Seq))
        {
            changes.Add(change);
            changes.Sort((a, b) => (a.Since, a.Seq).CompareTo((b.Since, b.Seq)));
        }
    }
}
