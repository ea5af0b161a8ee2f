using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>One reading of the journal as it stands, corrections applied: a row of a spreadsheet.</summary>
/// <param name="Status"><c>read</c>, <c>not taken</c>, or <c>corrected by SEQ</c>.</param>
public sealed record ReadingRow(Reading Reading, long Seq, string? Round, string By, string Status)
{
    /// <summary>From each record of a journal to the readings in it.</summary>
    public static Func<JournalRecord, IEnumerable<ReadingRow>> In(IJournalStore store)
    {
        var corrections = Corrected.LastOf(store.Corrections(1, long.MaxValue));
        return record => record.Body is Entry entry
            ? entry.Readings.Select(reading => Of(record, entry, reading, corrections.GetValueOrDefault((record.Seq, reading.Point))))
            : [];
    }

    private static ReadingRow Of(JournalRecord record, Entry entry, Reading reading, JournalRecord? correction) =>
        correction?.Body is Correction right
            ? new(right.Reading, record.Seq, entry.Round, record.By, FormattableString.Invariant($"corrected by {correction.Seq}"))
            : new(reading, record.Seq, entry.Round, record.By, reading.NotTaken ? "not taken" : "read");
}
