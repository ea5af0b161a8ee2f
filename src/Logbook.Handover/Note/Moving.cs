using System.Globalization;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Points that lead somewhere: first, middle and last value, the rate, and when it would reach a limit.</summary>
internal static class Moving
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of("moving", "MOVING", Trends(facts).Select(t => Line(facts, t)));

    /// <summary>The soonest at its limit first; the hours that a tank lasts stand beside its level.</summary>
    public static IReadOnlyList<Trend> Trends(ShiftFacts facts)
    {
        var all = facts.Series.Values.Select(Trend.Of).OfType<Trend>().Where(t => Applies(facts, t)).OrderBy(t => t.ReachedAt).ToList();
        return [.. all.Where(t => !all.Exists(level => Stock.IsHoursOf(facts.Site, t.Values[0].Point, level.Values[0].Point)))];
    }

    private static bool Applies(ShiftFacts facts, Trend trend) =>
        trend.Values[0].Point is var point && (point.Always || EquipmentHistory.Runs(facts.State.StateOf(point.Equipment)));

    private static NoteLine Line(ShiftFacts facts, Trend trend)
    {
        var values = trend.Values;
        var point = values[0].Point;
        Seen[] shown = [values[0], trend.From ?? trend.SteadySince ?? values[values.Count / 2], values[^1]];
        return new NoteLine(
            Say.Visible(point.Tag),
            $"{Say.Visible(point.Description)} {string.Join(", ", shown.DistinctBy(s => s.At).Select(s => $"{Say.Number(s.Value, point.Decimals)} at {facts.Time(s.At)}"))}: "
            + $"{(trend.SteadySince is { } since ? $"{(trend.PerHour > 0 ? "went up" : "went down")}, steady since {facts.Time(since.At)}{Doubts(facts, values)}" : Going(facts, trend))} {Say.Ref(shown.Select(s => s.Seq))}");
    }

    private static string Going(ShiftFacts facts, Trend trend) =>
        $"{(trend.PerHour > 0 ? "rising" : "falling")} {Rate(facts, trend)}{Doubts(facts, trend.Values)}; at that rate at {trend.LimitName}, "
        + $"{Say.Value(trend.Values[0].Point, trend.Limit, trend.Values[0].Point.Unit.Name)}, about {facts.Time(trend.ReachedAt)}{(trend.ReachedAt <= facts.AsOf ? ", which is over, and no reading since" : "")}{Hours(facts, trend)}";

    private static string Rate(ShiftFacts facts, Trend trend)
    {
        var values = trend.Values;
        var unit = Say.Visible(values[0].Point.Unit.Name);
        if (trend.From is not { } from)
        {
            return $"{Figures.Two(Math.Abs(trend.PerHour))} {unit} an hour over {Say.Count(values.Count, "reading")}";
        }

        var over = trend.OverTheShift is not { } whole ? ""
            : $", {(whole * trend.PerHour > 0 ? "" : whole > 0 ? "rising " : "falling ")}{Figures.Two(Math.Abs(whole))} over the shift";
        return $"{Say.Number(Math.Abs(trend.PerHour), 1)} {unit} an hour since {facts.Time(from.At)}{over}";
    }

    /// <summary>The hours that a tank lasts, where the site computes them and they fall too; with their limit where they reach it before the level does its own.</summary>
    private static string Hours(ShiftFacts facts, Trend level) => string.Concat(
        from values in facts.Series.Values
        let point = values[0].Point
        where Stock.IsHoursOf(facts.Site, point, level.Values[0].Point)
        let trend = Trend.Of(values)
        where trend is not null
        let sooner = trend.ReachedAt < level.ReachedAt ? $", at {trend.LimitName}, {Say.Value(point, trend.Limit, point.Unit.Name)}, about {facts.Time(trend.ReachedAt)}" : ""
        select $"; {Say.Visible(point.Tag)} {Say.Value(point, values[^1].Value, point.Unit.Name)} at {facts.Time(values[^1].At)}{sooner}");

    /// <summary>The readings of the line that hang on one that does not fit: with them the rate is doubtful too.</summary>
    private static string Doubts(ShiftFacts facts, IReadOnlyList<Seen> values) => string.Concat(values
        .Select(v => (v.At, See: facts.Doubted.See(v.Seq, v.Point.Tag))).Where(d => d.See is not null)
        .GroupBy(d => d.See, d => facts.Time(d.At), StringComparer.Ordinal)
        .Select(g => $", that of {string.Join(" and ", g)} doubted (see {Say.Visible(g.Key!)})"));
}
