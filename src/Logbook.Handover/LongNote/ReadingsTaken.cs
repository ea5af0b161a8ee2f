using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Every point that has a value in the shift, read or computed: first, lowest, highest and last, and its limits.</summary>
internal static class ReadingsTaken
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "readings",
        "READINGS",
        facts.Site.Points.Where(p => facts.Series.ContainsKey(p.Tag)).Select(p => new NoteLine(Say.Visible(p.Tag), $"{Say.Visible(p.Description)}: {Words(facts, p, facts.Series[p.Tag])}")));

    private static string Words(ShiftFacts facts, Point point, IReadOnlyList<Seen> values)
    {
        string At(Seen seen) => $"{seen.Words} at {facts.Time(seen.At)}";
        var last = $"last {At(values[^1])} {Say.Ref(values[^1].Seq)}";
        if (point.Choices.Count > 0)
        {
            return $"{string.Join(", ", values.GroupBy(v => v.Words, StringComparer.Ordinal).Select(g => $"{g.Key} {Say.Count(g.Count(), "time")}"))}; {last}";
        }

        return values.Count == 1 ? last + Limits(point)
            : $"{Say.Count(values.Count, point.Kind == PointKind.Derived ? "value" : "reading")}, lowest {At(values.MinBy(v => v.Value)!)}, highest {At(values.MaxBy(v => v.Value)!)}, {last}{Limits(point)}";
    }

    private static string Limits(Point point)
    {
        (string Name, double? Limit)[] limits =
        [
            ("urgent below", point.Limits.UrgentLow), ("watch below", point.Limits.WatchLow),
            ("watch above", point.Limits.WatchHigh), ("urgent above", point.Limits.UrgentHigh),
        ];
        var set = limits.Where(l => l.Limit is not null).Select(l => $"{l.Name} {Say.Number(l.Limit!.Value, point.Decimals)}").ToList();
        return set.Count == 0 ? "" : $"; {string.Join(", ", set)}";
    }
}
