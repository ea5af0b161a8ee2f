namespace Logbook.Handover;

/// <summary>The curves that go with the note: points that lead somewhere, then points with findings of the shift.</summary>
internal static class Trending
{
    // A curve repeats what a line already says, so this cuts nothing that is not in words.
    private const int OnAPage = 6;

    public static IReadOnlyList<NoteTrend> Of(ShiftFacts facts, int atMost = OnAPage) =>
    [
        .. Moving.Trends(facts).Select(t => t.Values[0].Point.Tag).Concat(facts.Excursions.Select(e => e.Point).OfType<string>())
            .Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(tag => facts.Series.GetValueOrDefault(tag)).OfType<IReadOnlyList<Seen>>()
            .Where(values => values.Count >= 3 && values[0].Point.Choices.Count == 0)
            .Take(atMost).Select(values => Curve(facts, values)),
    ];

    private static NoteTrend Curve(ShiftFacts facts, IReadOnlyList<Seen> values)
    {
        var point = values[0].Point;
        var limits = point.Limits;
        return new NoteTrend(
            Say.Visible(point.Tag), Say.Visible(point.Description), Say.Visible(point.Unit.Name),
            [.. values.Select(v => (Plant.Calendar.ToSite(facts.Site, v.At), v.Value))],
            limits.WatchLow, limits.WatchHigh, limits.UrgentLow, limits.UrgentHigh);
    }
}
