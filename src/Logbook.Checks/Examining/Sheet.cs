using Logbook.Journal;

namespace Logbook.Checks.Examining;

/// <summary>One entry as the examination reads it, corrections put in.</summary>
/// <param name="Seq">Its record; <see cref="NotYet"/> while it is being made.</param>
internal sealed record Sheet(long Seq, DateTimeOffset At, IReadOnlyList<Reading> Readings, IReadOnlyList<Result> Results, IReadOnlyList<Finding> Findings)
{
    /// <summary>No record has it yet.</summary>
    public const long NotYet = long.MaxValue;

    /// <summary>True for a walk that would have been made anyway; false for what was read on purpose, a second reading among it.</summary>
    public bool Routine { get; init; }

    public double Hours => HoursOf(At);

    /// <summary>Hours since a fixed time.</summary>
    public static double HoursOf(DateTimeOffset at) => (at - DateTimeOffset.UnixEpoch).TotalHours;

    public static Sheet Of(JournalRecord record, Entry entry) => Of(record.Seq, record.At, entry);

    public static Sheet Of(long seq, DateTimeOffset at, Entry entry) =>
        new(seq, at, entry.Readings, entry.Results, entry.Findings) { Routine = entry.Round is not null && entry.SecondOf is null };

    /// <summary>Tags that it says anything of.</summary>
    public HashSet<string> Judged() => [.. Readings.Where(r => !r.NotTaken).Select(r => r.Point), .. Results.Select(r => r.Point).OfType<string>()];

    public Sheet Corrected(Correction correction)
    {
        return Readings.Any(r => correction.Of(r.Point) is not null)
            ? this with { Readings = correction.PutInto(Readings), Results = correction.Results, Findings = correction.Findings }
            : this;
    }
}

/// <summary>A stretch of the journal as the examination reads it.</summary>
/// <param name="Sheets">Entries in the order of their time.</param>
/// <param name="Standstill">When what was not running.</param>
internal sealed record Stretch(IReadOnlyList<Sheet> Sheets, Standstill Standstill)
{
    /// <param name="store">The journal.</param>
    /// <param name="state">What is known at its end.</param>
    /// <param name="from">The first time that counts.</param>
    /// <param name="to">The last.</param>
    /// <param name="before">Only what records below this one say.</param>
    public static Stretch Of(IJournalStore store, State state, DateTimeOffset from, DateTimeOffset to, long before = long.MaxValue)
    {
        var standstill = new Standstill(state);
        var sheets = new SortedDictionary<long, Sheet>();
        foreach (var record in store.Between(from, to.AddMilliseconds(1)).Where(r => r.Seq < before))
        {
            standstill.Take(record);
            if (record.Body is Entry entry)
            {
                sheets[record.Seq] = Sheet.Of(record, entry);
            }
        }

        if (sheets.Count > 0)
        {
            foreach (var record in store.Corrections(sheets.First().Key, sheets.Last().Key).Where(r => r.Seq < before))
            {
                var correction = (Correction)record.Body;
                if (sheets.TryGetValue(correction.Target, out var sheet))
                {
                    sheets[correction.Target] = sheet.Corrected(correction);
                }
            }
        }

        return new Stretch([.. sheets.Values.OrderBy(s => s.At).ThenBy(s => s.Seq)], standstill);
    }
}
