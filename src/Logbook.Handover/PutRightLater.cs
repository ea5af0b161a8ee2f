using System.Runtime.CompilerServices;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A result that was computed from a value of an earlier entry, which was put right afterwards. It stands as it was computed.</summary>
/// <param name="Result">The derived point, or what the result is called.</param>
/// <param name="From">The point whose value it took.</param>
/// <param name="Target">The entry that the value stands in.</param>
/// <param name="Correction">The record that put it right.</param>
internal sealed record RestsOnWrong(string Result, string From, long Target, long Correction);

/// <summary>
/// Which results of an entry rest on a value that was put right only after it. Nothing is computed anew, since the entry was
/// judged by what was known then: it is said beside them. Keeps what it asked the store for, since lists ask of many entries.
/// </summary>
internal sealed class PutRightLater(Desk desk)
{
    // Corrections are asked for by so many targets at once. Their entries lie that far back at most, or the value was stale.
    private const int Block = 512;

    private readonly Dictionary<long, List<JournalRecord>> _corrections = [];

    private readonly Dictionary<long, JournalRecord?> _found = [];

    // A note asks of one entry as often as it has something to say, and each answer reads a series for each input. Kept as long as
    // whoever asks keeps the entry: of a log of years that would be most of the memory.
    private readonly ConditionalWeakTable<Entry, IReadOnlyList<RestsOnWrong>> _told = [];

    public IReadOnlyList<RestsOnWrong> Of(JournalRecord record, Entry entry) => _told.GetValue(entry, asked => Look(record, asked));

    private List<RestsOnWrong> Look(JournalRecord record, Entry entry)
    {
        var block = record.Seq / Block;
        // What was put right itself was computed anew then, from what stood by that time.
        var computed = Corrections(block).Where(c => ((Correction)c.Body).Target == record.Seq).Select(c => c.Seq).Append(record.Seq).Max();
        var later = entry.Results.Count == 0 ? [] : Corrections(block - 1).Concat(Corrections(block)).Where(c => ((Correction)c.Body).Target < record.Seq && c.Seq > computed).ToList();
        if (later.Count == 0)
        {
            return [];
        }

        var site = SiteInForce.At(desk, record.At);
        var found = new List<RestsOnWrong>();
        var earlier = new Dictionary<(string Tag, TimeSpan Lag), RestsOnWrong?>();
        RestsOnWrong? Earlier(string tag, TimeSpan lag)
        {
            if (!earlier.TryGetValue((tag, lag), out var wrong))
            {
                earlier[(tag, lag)] = wrong = FromEarlier(site, record, tag, lag, later);
            }

            return wrong;
        }

        foreach (var result in entry.Results)
        {
            var name = result.Point ?? $"{result.Name}, {result.Output}";
            var binding = site.Calculations.FirstOrDefault(c => c.Name.Equals(result.Name, StringComparison.Ordinal));
            foreach (var (role, source) in binding?.Inputs ?? new Dictionary<string, InputSource>(StringComparer.Ordinal))
            {
                if (source is InputSource.FromPoint { Tag: var tag } && From(entry, tag, binding!.Lags.GetValueOrDefault(role), found, Earlier) is { } wrong)
                {
                    found.Add(wrong with { Result = name });
                }
            }
        }

        return found;
    }

    /// <summary><c>computed from SL-T1 (#44), since put right (#50): SL-CAO</c>; empty when nothing is.</summary>
    public string Words(JournalRecord record, Entry entry) => string.Join("; ", Of(record, entry)
        .GroupBy(r => (r.From, r.Target, r.Correction)).Select(g => $"computed from {Words(g.First())}: {string.Join(", ", g.Select(r => Say.Visible(r.Result)).Distinct(StringComparer.Ordinal))}"));

    /// <summary>What was put right since of that on which an open finding rests, in brackets; empty when nothing was.</summary>
    public string Words(OpenFinding open)
    {
        var seq = open.Corrects ?? open.Seq;
        return open.Finding.Point is { } computed && Found(seq) is { Body: Entry entry } record && Of(record, entry).FirstOrDefault(r => Same(r.Result, computed)) is { } rests
            ? $" (computed from {Words(rests)})"
            : InTheRun(open.Finding, open.At, seq) is { } right ? $" (one of them was put right since {Say.Ref(right)})" : "";
    }

    /// <summary>The record of an open finding; most have more than one.</summary>
    private JournalRecord? Found(long seq)
    {
        if (!_found.TryGetValue(seq, out var record))
        {
            _found[seq] = record = desk.Store.Read(seq).FirstOrDefault();
        }

        return record;
    }

    /// <summary><c>put right by A. Stone 02:40 (#50)</c> of the entry itself; empty when it stands as it was typed.</summary>
    public string Itself(JournalRecord entry) => Corrections(entry.Seq / Block).Where(c => ((Correction)c.Body).Target == entry.Seq)
        .Select(c => $"by {Say.Person(desk.Site, c.By)} {Say.Time(desk.Site, c.At, entry.At)} {Say.Ref(c.Seq)}").ToList() is { Count: > 0 } right
        ? $"put right {string.Join(", ", right)}" : "";

    /// <summary>Of a value that is the same for long, or that jumped: the correction, after it was said, of one that it counts or jumped from; null while they all stand.</summary>
    /// <param name="at">When the last of them was read.</param>
    /// <param name="seq">The record that says so.</param>
    public long? InTheRun(Finding finding, DateTimeOffset at, long seq)
    {
        if (finding.Code is not ("stuck" or "step") || finding.Point is not { } tag)
        {
            return null;
        }

        var newestFirst = desk.Store.Series(tag, at - Run, at.AddMilliseconds(1)).Reverse().ToList();
        if (finding.Code == "step")
        {
            // It jumped from the one before it alone.
            return newestFirst.SkipWhile(v => v.Seq != seq).Skip(1).FirstOrDefault(v => v.Value is not null || v.CorrectedBy is not null)?.CorrectedBy is { } right && right > seq ? right : null;
        }

        var value = newestFirst.Find(v => v.Seq == seq)?.Value;
        return newestFirst.TakeWhile(v => v.Value == value || v.CorrectedBy > seq).FirstOrDefault(v => v.CorrectedBy > seq && v.Value != value)?.CorrectedBy;
    }

    // A run is looked for no further back than that, as where it is found.
    private static readonly TimeSpan Run = TimeSpan.FromDays(14);

    /// <summary><c>SL-T1 (#44), since put right (#50)</c>.</summary>
    public static string Words(RestsOnWrong wrong) => $"{Say.Visible(wrong.From)} {Say.Ref(wrong.Target)}, since put right {Say.Ref(wrong.Correction)}";

    private static bool Same(string? one, string? other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    /// <summary>What the input was taken from: this entry, one of its own results, or an earlier one as it was known then.</summary>
    private static RestsOnWrong? From(Entry entry, string tag, TimeSpan lag, List<RestsOnWrong> found, Func<string, TimeSpan, RestsOnWrong?> earlier)
    {
        if (lag == TimeSpan.Zero && entry.Readings.Any(r => Same(r.Point, tag) && !r.NotTaken))
        {
            return null;
        }

        if (lag == TimeSpan.Zero && entry.Results.Any(r => Same(r.Point, tag)))
        {
            return found.Find(f => Same(f.Result, tag));
        }

        return earlier(tag, lag);
    }

    private RestsOnWrong? FromEarlier(Site site, JournalRecord record, string tag, TimeSpan lag, List<JournalRecord> later) => Taken(site, record, tag, lag)
        .Select(v => later.LastOrDefault(c => ((Correction)c.Body).Target == v.Seq) is { } right && Now(v) != v.Value ? new RestsOnWrong("", tag, v.Seq, right.Seq) : null)
        .FirstOrDefault(r => r is not null);

    /// <summary>The values that a calculation of that record took: see <c>Checks/PastValues</c>.</summary>
    private IEnumerable<SeriesValue> Taken(Site site, JournalRecord record, string tag, TimeSpan lag)
    {
        var (then, window) = (record.At - lag, LagWindow.Of(record.At, lag));
        IEnumerable<SeriesValue> Known(DateTimeOffset from, DateTimeOffset to) => desk.Store.Series(tag, from, to.AddMilliseconds(1), record.Seq - 1).Where(v => v.Value is not null);
        var mean = lag == TimeSpan.Zero ? [] : Known(window.From, window.To).ToList();
        return mean.Count > 0 || site.FindPoint(tag) is not { } point ? mean : Known(then - point.Stale, then).TakeLast(1);
    }

    private double? Now(SeriesValue value) => desk.Store.Series(value.Point, value.At, value.At.AddMilliseconds(1)).FirstOrDefault(v => v.Seq == value.Seq)?.Value;

    private List<JournalRecord> Corrections(long block)
    {
        if (!_corrections.TryGetValue(block, out var corrections))
        {
            _corrections[block] = corrections = block < 0 ? [] : [.. desk.Store.Corrections(block * Block, (block * Block) + Block - 1)];
        }

        return corrections;
    }
}
