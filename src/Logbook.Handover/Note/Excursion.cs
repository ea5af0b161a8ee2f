using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>
/// What one kind of finding said about one point over the shift, or says since before it, folded to one line: the worst,
/// how often, and whether it stands at the last judgement. Notes are left out; what asks for nothing does not stand
/// between things that do.
/// </summary>
internal sealed record Excursion(string? Point, Level Worst, DateTimeOffset First, string Text)
{
    public static IReadOnlyList<Excursion> Of(ShiftFacts facts) =>
    [
        .. facts.Entries
            .SelectMany(e => e.Entry.Findings.Select(f => new Noticed(Time(e.Record, e.Entry, f), e.Record.Seq, f)))
            .Concat(StillStanding(facts))
            .Where(n => n.Finding.Level >= Level.Watch)
            .GroupBy(n => (n.Finding.Point, Family: Family(n.Finding.Code)))
            .Select(g => Fold(facts, [.. g.OrderBy(n => n.At).ThenBy(n => n.Seq)]))
            .OrderByDescending(e => e.Worst).ThenBy(e => e.First),
    ];

    /// <summary>Too high and too low are two stories; watch and urgent on one side are one.</summary>
    private static string Family(string code)
    {
        var kind = code.Split('.')[0];
        return kind == "limit" ? kind + code[code.LastIndexOf('-')..] : kind;
    }

    /// <summary>What was found before the shift and that no later reading has cleared.</summary>
    private static IEnumerable<Noticed> StillStanding(ShiftFacts facts) =>
        facts.State.Findings.Values.SelectMany(f => f).Where(f => f.At < facts.Shift.Start).OrderBy(f => f.Seq).ThenBy(f => f.Number).Select(f => new Noticed(f.At, f.Seq, f.Finding));

    private static DateTimeOffset Time(JournalRecord record, Entry entry, Finding finding) =>
        entry.Readings.FirstOrDefault(r => r.Point.Equals(finding.Point, StringComparison.OrdinalIgnoreCase))?.At ?? record.At;

    private static Excursion Fold(ShiftFacts facts, List<Noticed> noticed)
    {
        // Of a broken limit the value furthest beyond it, of anything else the newest words.
        var limit = noticed[0].Finding.Code.StartsWith("limit.", StringComparison.Ordinal);
        var worst = noticed.MaxBy(n => (n.Finding.Level, limit ? Beyond(facts, n) : 0, n.At))!;
        var last = noticed[^1];
        var later = Later(facts, last);
        var often = noticed.Count == 1
            ? $"At {facts.Time(worst.At)}"
            : $"{(limit ? $"Worst at {facts.Time(worst.At)}, " : "")}{noticed.Count} times from {facts.Time(noticed[0].At)} to {facts.Time(last.At)}";
        var since = later switch
        {
            null when last.At >= facts.Shift.Start => ".",
            null or [] => "; no later reading.",
            _ => $"; from {facts.Time(later[0].At)} without this finding, {later[^1].Words} at {facts.Time(later[^1].At)}.",
        };
        var words = limit && later is { Count: > 0 } ? WithoutAsking(worst.Finding.Text) : worst.Finding.Text;
        var text = facts.Doubted.See(worst.Seq, worst.Finding.Point) is { } tag ? $"{Say.Visible(words).TrimEnd('.')} (doubted: see {Say.Visible(tag)})." : Say.Sentence(words);
        return new Excursion(
            noticed[0].Finding.Point, worst.Finding.Level, noticed[0].At,
            $"{worst.Finding.Level.ToString().ToUpperInvariant()}: {text} {often}{since} {Say.Ref(noticed[0].Seq, worst.Seq, last.Seq)}");
    }

    /// <summary>What a broken limit asked for at the time stands after the value; once it is over it would mislead.</summary>
    private static string WithoutAsking(string text) => text.Split("; ")[0];

    /// <summary>Values of the point after its last finding; null when no values are known of it.</summary>
    private static IReadOnlyList<Seen>? Later(ShiftFacts facts, Noticed last) =>
        last.Finding.Point is { } tag && facts.Series.TryGetValue(tag, out var series) ? [.. series.Where(s => s.At > last.At)] : null;

    /// <summary>How far the reading was beyond its outermost limit; 0 when no limit tells.</summary>
    private static double Beyond(ShiftFacts facts, Noticed noticed)
    {
        if (noticed.Finding.Point is not { } tag || !facts.Series.TryGetValue(tag, out var series) || series.FirstOrDefault(s => s.At == noticed.At) is not { } seen)
        {
            return 0;
        }

        var limits = seen.Point.Limits;
        var above = seen.Value - (limits.WatchHigh ?? limits.UrgentHigh ?? double.PositiveInfinity);
        var below = (limits.WatchLow ?? limits.UrgentLow ?? double.NegativeInfinity) - seen.Value;
        return Math.Max(0, Math.Max(above, below));
    }

    private sealed record Noticed(DateTimeOffset At, long Seq, Finding Finding);
}
