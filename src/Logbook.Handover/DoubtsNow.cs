using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// Which alarms that stand hang on a reading that is doubted still, the newest of its point: those of its own entry, those of a
/// later one, which took its value, and those of an entry that doubted it itself.
/// </summary>
internal sealed class DoubtsNow
{
    private readonly IJournalStore _store;
    private readonly Links _links;
    private readonly List<(long Seq, string Point)> _readings;
    private readonly Dictionary<long, IReadOnlyList<Finding>> _found = [];

    public DoubtsNow(Site site, IJournalStore store, State state)
    {
        _store = store;
        _links = new Links(site);
        _readings =
        [
            .. from tag in state.Findings.Values.SelectMany(f => f).Select(f => f.Finding).Where(Doubted.Doubts).Select(f => f.Point!).Distinct(StringComparer.Ordinal)
               let latest = state.Latest.GetValueOrDefault(tag)
               where latest is not null
               select (latest.Seq, tag),
        ];
    }

    /// <summary>The doubted reading on which an alarm hangs; null when it hangs on none. The reading itself tells its own doubt.</summary>
    public string? See(OpenFinding open) => open.Finding.Point is not { } tag ? null : _readings
        .Where(d => (open.Corrects ?? open.Seq) >= d.Seq).Select(d => d.Point).Concat(DoubtedIn(open.Seq))
        .FirstOrDefault(d => _links.Makes(d, tag) && !d.Equals(tag, StringComparison.OrdinalIgnoreCase));

    /// <summary>What its own entry doubted: until it is computed anew it hangs on that, whatever was read since.</summary>
    private IEnumerable<string> DoubtedIn(long seq)
    {
        if (!_found.TryGetValue(seq, out var findings))
        {
            _found[seq] = findings = _store.Read(seq).FirstOrDefault()?.Body switch { Entry entry => entry.Findings, Correction right => right.Findings, _ => [] };
        }

        return findings.Where(Doubted.Doubts).Select(f => f.Point!);
    }
}
