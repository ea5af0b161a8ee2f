using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>One reading of the journal as it stands, corrections applied: a row of a spreadsheet.</summary>
/// <param name="Status"><c>read</c>, <c>not taken</c>, <c>corrected by SEQ</c>, <c>taken back by SEQ</c>, or <c>computed</c>.</param>
/// <param name="Doubts">What keeps it apart from clean readings: <c>typed later</c>, <c>imported</c>, <c>stuck</c>, <c>step</c>, <c>range</c>, <c>unit</c>, <c>contradicted</c>.</param>
public sealed record ReadingRow(Reading Reading, long Seq, string? Round, string By, string Status, IReadOnlyList<string> Doubts)
{
    // As long as a walk and its typing may take. Judgement, no source.
    private static readonly TimeSpan Late = TimeSpan.FromHours(1);

    /// <summary>From each record of a journal to the readings in it.</summary>
    public static Func<JournalRecord, IEnumerable<ReadingRow>> In(IJournalStore store)
    {
        var corrections = Corrected.LastOf(store.Corrections(1, long.MaxValue));
        return record => record.Body is Entry entry
            ? entry.Readings.Select(reading => Of(record, entry, reading, corrections.GetValueOrDefault((record.Seq, reading.Point))))
            : [];
    }

    /// <summary>The same for values that were computed of the readings, after their last correction.</summary>
    public static Func<JournalRecord, IEnumerable<ReadingRow>> Computed(IJournalStore store)
    {
        var runs = store.Corrections(1, long.MaxValue).Select(r => (Correction)r.Body).GroupBy(c => c.Target).ToDictionary(g => g.Key, g => g.Last().Results);
        return record => record.Body is Entry entry
            ? (runs.GetValueOrDefault(record.Seq) ?? entry.Results).Where(r => r.Point is not null).Select(r => new ReadingRow(
                new Reading { Point = r.Point!, Typed = "", Value = r.Value, Unit = r.Unit, At = record.At }, record.Seq, entry.Round, record.By, "computed", []))
            : [];
    }

    private static ReadingRow Of(JournalRecord record, Entry entry, Reading reading, JournalRecord? correction) =>
        correction?.Body is Correction body && body.Of(reading.Point) is { } right
            ? new(right, record.Seq, entry.Round, record.By, FormattableString.Invariant($"{(right.NotTaken ? "taken back" : "corrected")} by {correction.Seq}"), DoubtsOf(record, entry, right, body.Findings))
            : new(reading, record.Seq, entry.Round, record.By, reading.NotTaken ? "not taken" : "read", DoubtsOf(record, entry, reading, entry.Findings));

    private static IReadOnlyList<string> DoubtsOf(JournalRecord record, Entry entry, Reading reading, IReadOnlyList<Finding> findings) =>
    [
        .. entry.Imported is not null ? ["imported"] : record.Entered - reading.At > Late ? ["typed later"] : Array.Empty<string>(),
        .. findings.Where(f => reading.Point.Equals(f.Point, StringComparison.OrdinalIgnoreCase)).Select(f => Doubt(f.Code)).OfType<string>().Distinct(StringComparer.Ordinal),
    ];

    private static string? Doubt(string code) => code.Split('.')[0] switch
    {
        "stuck" => "stuck",
        "step" => "step",
        "range" => "range",
        "twice" => "twice",
        "slip" => "unit",
        "examine" when !code.EndsWith(".unusual", StringComparison.Ordinal) => "contradicted",
        _ => null,
    };
}
