using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// When a person held the line by the own PIN: only then does a code say who typed. Readings need no PIN, so what was typed
/// at any other time under that code is nobody's here.
/// </summary>
internal sealed class OpenedByPin
{
    private readonly List<(DateTimeOffset From, DateTimeOffset To)> _stretches = [];

    public int Count => _stretches.Count;

    public static OpenedByPin Of(IEnumerable<JournalRecord> records, string code, DateTimeOffset now)
    {
        var opened = new OpenedByPin();
        // Even one that came too late and moved nothing ends the stretch: who typed then is not certain.
        var moves = records.Where(r => r.Body is HandoverAccepted or HandoverRelief).ToList();
        opened._stretches.AddRange(moves
            .Select((move, i) => (Move: move, To: i + 1 < moves.Count ? moves[i + 1].Entered : now.AddTicks(1)))
            .Where(m => Handed.Same(m.Move.By, code) && Standing.SignedOf(m.Move.Body) is { How: "pin" })
            .Select(m => (m.Move.Entered, m.To)));
        return opened;
    }

    public bool Covers(DateTimeOffset at) => _stretches.Exists(s => s.From <= at && at < s.To);
}
