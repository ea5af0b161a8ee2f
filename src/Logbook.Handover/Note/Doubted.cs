using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// Which values of the shift hang on a reading that the cross-examination says does not fit: wherever the note tells one of
/// them, it says so. The doubt itself stands in full at its reading.
/// </summary>
internal sealed class Doubted
{
    private readonly Links _links;
    private readonly ILookup<string, long> _read;
    private readonly List<(long Seq, string Point)> _readings = [];

    public Doubted(ShiftFacts facts)
    {
        _links = new Links(facts.Site);
        _read = facts.Entries.SelectMany(e => e.Entry.Readings.Where(r => !r.NotTaken).Select(r => (r.Point, e.Record.Seq))).OrderBy(r => r.Seq).ToLookup(r => r.Point, r => r.Seq, StringComparer.OrdinalIgnoreCase);
        var corrections = Corrected.LastOf(facts.Records);
        foreach (var (record, entry) in facts.Entries)
        {
            var said = corrections.Where(c => c.Key.Target == record.Seq).Select(c => c.Value.Seq).Append(record.Seq).Max();
            foreach (var tag in entry.Findings.Where(Doubts).Select(f => f.Point!))
            {
                // An entry may throw doubt on a reading of one before it: of those up to then the newest is meant.
                var read = facts.Entries.LastOrDefault(e => e.Record.Seq <= record.Seq && e.Entry.Readings.Any(r => r.Point == tag && !r.NotTaken)).Record;
                var seq = read?.Seq ?? record.Seq;
                // A reading that was put right after that is another one: it was not doubted.
                if (!(corrections.GetValueOrDefault((seq, tag))?.Seq > said))
                {
                    _readings.Add((seq, tag));
                }
            }
        }
    }

    /// <summary>The reading on which a value of that record hangs and that is doubted; null when none is. The reading itself tells its own doubt.</summary>
    public string? See(long seq, string? tag) => tag is null ? null
        : _readings.Where(d => d.Seq == Newest(d.Point, seq) && _links.Makes(d.Point, tag) && !d.Point.Equals(tag, StringComparison.OrdinalIgnoreCase)).Select(d => d.Point).FirstOrDefault();

    /// <summary>The entry whose reading of the point a value of that record took: its own, or the newest before it.</summary>
    private long? Newest(string point, long seq) => _read[point].LastOrDefault(read => read <= seq) is > 0 and var newest ? newest : null;

    /// <summary>A reading that does not fit, or one of a few of which one does not: not what is only unusual.</summary>
    public static bool Doubts(Finding finding) =>
        finding is { Level: >= Level.Watch, Point: not null } && finding.Code.StartsWith("examine.", StringComparison.Ordinal);
}
