using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What an audit looks at, each part read once and only when a question needs it.</summary>
internal sealed class AuditSpan(Desk desk, DateTimeOffset from, DateTimeOffset to)
{
    // What is usual is learned from this long before the stretch, too.
    private static readonly TimeSpan Learns = TimeSpan.FromDays(30);

    // A late reading of the last check may stand this long after it: see RoundSheet.
    private static readonly TimeSpan Reaches = TimeSpan.FromHours(28);

    private State? _begin;
    private State? _end;
    private IReadOnlyList<DueCheck>? _checks;
    private IReadOnlyList<JournalRecord>? _records;
    private IReadOnlyList<(JournalRecord Record, Entry Entry)>? _entries;

    public Desk Desk => desk;

    public DateTimeOffset From => from;

    public DateTimeOffset To => to;

    /// <summary>The last moment of the stretch that is over.</summary>
    public DateTimeOffset End => to < desk.Now ? to : desk.Now;

    /// <summary>What stood when the stretch began.</summary>
    public State BeginState => _begin ??= JournalSpan.StateAt(desk, from);

    /// <summary>What stood at its last moment.</summary>
    public State EndState => _end ??= JournalSpan.StateAt(desk, End);

    /// <summary>Every check of the stretch.</summary>
    public IReadOnlyList<DueCheck> Checks => _checks ??= DueList.Between(desk, from, to, (_, begin, end) => begin < from - Learns || end > to + Reaches ? JournalSpan.Touching(desk, begin, end) : WithHistory);

    /// <summary>The records of the stretch.</summary>
    public IEnumerable<JournalRecord> Records => WithHistory.Where(r => r.At >= from && r.At < to);

    /// <summary>The records of the stretch and of the month before it, with every correction since.</summary>
    public IReadOnlyList<JournalRecord> WithHistory => _records ??= JournalSpan.Touching(desk, from - Learns, to + Reaches);

    /// <summary>The entries of the stretch and of the month before it, corrections applied.</summary>
    public IReadOnlyList<(JournalRecord Record, Entry Entry)> Entries =>
        _entries ??= [.. Corrected.Entries(WithHistory).Where(e => e.Record.At >= from - Learns && e.Record.At < to)];
}
