using System.Globalization;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Points that lead somewhere: first, middle and last value, the rate, and when it would reach a limit.</summary>
internal static class Moving
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of("moving", "MOVING", Trends(facts).Select(t => Line(facts, t)));

    /// <summary>The soonest at its limit first.</summary>
    public static IReadOnlyList<Trend> Trends(ShiftFacts facts) =>
        [.. facts.Series.Values.Select(Trend.Of).OfType<Trend>().Where(t => Applies(facts, t)).OrderBy(t => t.ReachedAt)];

    private static bool Applies(ShiftFacts facts, Trend trend) =>
        trend.Values[0].Point is var point && (point.Always || EquipmentHistory.Runs(facts.State.StateOf(point.Equipment)));

    private static NoteLine Line(ShiftFacts facts, Trend trend)
    {
        var values = trend.Values;
        var point = values[0].Point;
        Seen[] shown = [values[0], values[values.Count / 2], values[^1]];
        var rate = Figures.Two(Math.Abs(trend.PerHour));
        return new NoteLine(
            Say.Visible(point.Tag),
            $"{Say.Visible(point.Description)} {string.Join(", ", shown.Select(s => $"{Say.Number(s.Value, point.Decimals)} at {facts.Time(s.At)}"))}: "
            + $"{(trend.PerHour > 0 ? "rising" : "falling")} {rate} {Say.Visible(point.Unit.Name)} an hour over {Say.Count(values.Count, "reading")}{Doubts(facts, values)}; at that rate at {trend.LimitName}, "
            + $"{Say.Value(point, trend.Limit, point.Unit.Name)}, about {facts.Time(trend.ReachedAt)}{(trend.ReachedAt <= facts.AsOf ? ", which is over, and no reading since" : "")} {Say.Ref(shown.Select(s => s.Seq))}");
    }

    /// <summary>The readings of the line that hang on one that does not fit: with them the rate is doubtful too.</summary>
    private static string Doubts(ShiftFacts facts, IReadOnlyList<Seen> values) => string.Concat(values
        .Select(v => (v.At, See: facts.Doubted.See(v.Seq, v.Point.Tag))).Where(d => d.See is not null)
        .GroupBy(d => d.See, d => facts.Time(d.At), StringComparer.Ordinal)
        .Select(g => $", that of {string.Join(" and ", g)} doubted (see {Say.Visible(g.Key!)})"));
}
