using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>One reading as the due list sees it, corrections applied.</summary>
/// <param name="CountsAt">The time that places it: when the walk began, else when it was read. A correction never moves it.</param>
/// <param name="Entered">When it was first typed as a value, or when it was said that it was not taken.</param>
internal sealed record Answer(
    string Point, string? Round, DateTimeOffset CountsAt, DateTimeOffset TakenAt, DateTimeOffset Entered, bool Taken, string? Why, long Seq, string By)
{
    /// <summary>True for a value that a correction took back: while its check can still be made it is as if nothing had been read.</summary>
    public bool TakenBack { get; private init; }

    /// <summary>True for a walk that was written on a sheet first and typed when it was over.</summary>
    public bool Walked { get; private init; }

    public static IEnumerable<Answer> All(IReadOnlyList<JournalRecord> records)
    {
        var corrections = Corrected.LastOf(records);
        foreach (var record in records)
        {
            if (record.Body is Entry entry)
            {
                foreach (var reading in entry.Readings)
                {
                    yield return Of(record, entry, reading, corrections.GetValueOrDefault((record.Seq, reading.Point)));
                }
            }
        }
    }

    private static Answer Of(JournalRecord record, Entry entry, Reading reading, JournalRecord? correction)
    {
        var now = (correction?.Body as Correction)?.Of(reading.Point) ?? reading;
        // What was first said to be not taken and got a value afterwards was typed when the correction was.
        var lateValue = reading.NotTaken && !now.NotTaken;
        var taken = lateValue ? now.At : reading.At;
        return new Answer(
            reading.Point, entry.Round, entry.WalkStart ?? taken, taken, lateValue ? correction!.Entered : record.Entered,
            !now.NotTaken, now.Why, record.Seq, record.By) { TakenBack = now.NotTaken && !reading.NotTaken, Walked = entry.WalkStart is not null };
    }
}
