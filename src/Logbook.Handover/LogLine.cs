using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>One record in words.</summary>
/// <param name="Areas">Codes of the areas that it is about; none when it is about the line as a whole.</param>
/// <param name="Words">One line; a correction shows both values.</param>
/// <param name="Worst">The worst level of its findings; null when none.</param>
public sealed record LogLine(long Seq, DateTimeOffset At, DateTimeOffset Entered, string Shift, string By, string Kind, IReadOnlyList<string> Areas, string Words, Level? Worst)
{
    /// <summary>The one area that it is about; empty when there are several or none.</summary>
    public string Area => Areas is [var only] ? only : "";

    /// <summary>The record in one line.</summary>
    public static LogLine Of(Desk desk, JournalRecord record) => Of(desk, record, new PutRightLater(desk));

    /// <summary>Each record in one line.</summary>
    public static IEnumerable<LogLine> Of(Desk desk, IEnumerable<JournalRecord> records)
    {
        var later = new PutRightLater(desk);
        return records.Select(record => Of(desk, record, later));
    }

    private static LogLine Of(Desk desk, JournalRecord record, PutRightLater later)
    {
        IReadOnlyList<Finding> findings = record.Body switch { Entry e => e.Findings, Correction c => c.Findings, _ => [] };
        return new LogLine(
            record.Seq, record.At, record.Entered, record.Shift, record.By, Say.Visible(record.Kind), RecordWords.Areas(desk, record.Body),
            RecordWords.Of(desk, record, later), findings.New().Select(f => (Level?)f.Level).Max());
    }
}
