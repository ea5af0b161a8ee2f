using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Handover;

/// <summary>What falls due from now until the end of the next shift: dates of open items, rounds, a change of the clock.</summary>
internal static class ComingNext
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "coming",
        "COMING",
        [
            .. Dates(facts).Concat(InsteadOf(facts)).Concat(ClockChange(facts)).OrderBy(x => x.At).Select(x => x.Line),
            .. Rounds(facts).OrderBy(r => r.At).Select(r => r.Words).ToList() is { Count: > 0 } rounds ? [new NoteLine("rounds", (facts.State.Upset is null ? "" : "while the upset lasts safety points only: ") + string.Join("; ", rounds))] : Array.Empty<NoteLine>(),
        ]);

    // Of the others the date says when they come.
    private static readonly HashSet<string> Ends = new(["permit", "bypass", "temporary-change", "isolation", "safety-equipment"], StringComparer.Ordinal);

    private static IEnumerable<(DateTimeOffset At, NoteLine Line)> Dates(ShiftFacts facts) =>
        facts.State.Carried.Where(i => i.Until is { } until && until >= facts.AsOf && until <= facts.Next.End)
            .Select(i => (i.Until!.Value, new NoteLine(facts.Time(i.Until!.Value), $"{Say.Kind(i.ItemKind)}{(Ends.Contains(i.ItemKind) ? " ends" : "")}, {Say.Equipment(facts.Site, i.On)}: {Say.Visible(i.Text)} {Say.Ref(i.Id)}")));

    /// <summary>What stands in for a trip is a time of its own: it is not one of the rounds that are known by heart.</summary>
    private static IEnumerable<(DateTimeOffset At, NoteLine Line)> InsteadOf(ShiftFacts facts) =>
        InsteadOfTrips.Next(facts.Site, facts.State, facts.AsOf).Where(n => n.DueAt <= facts.Next.End).Select(n => (
            n.DueAt, new NoteLine(facts.Time(n.DueAt), $"{Say.Visible(n.Point)} by hand instead of the trip, then each {Say.Span(n.Every)} {Say.Ref(n.Item.Id)}")));

    /// <summary>
    /// Rounds are many and known to whoever walks them, so they are one line: when the next is due, how often, and when the last.
    /// One that was walked before it was due does not come any more. While an upset lasts only those that have a safety point are walked, for that alone.
    /// </summary>
    private static IEnumerable<(DateTimeOffset At, string Words)> Rounds(ShiftFacts facts)
    {
        static bool IsSaid(DueCheck check) => check.State is CheckState.Done or CheckState.Late or CheckState.NotTaken;
        var done = facts.Checks.Where(c => c.DueAt >= facts.AsOf).GroupBy(c => (c.Round, c.DueAt))
            .Where(slot => slot.Any(IsSaid) && slot.All(c => IsSaid(c) || c.State == CheckState.NotApplicable)).Select(slot => slot.Key).ToHashSet();
        foreach (var round in facts.Site.Rounds)
        {
            var slots = Calendar.Slots(facts.Site, round, facts.AsOf, facts.Next.End).Where(s => !done.Contains((round.Id, s.DueAt)))
                .Where(s => facts.State.Upset is null || s.Points.Any(tag => facts.Site.FindPoint(tag) is { Always: true })).ToList();
            if (slots.Count > 0)
            {
                var often = slots.Count == 1 ? "" : $" and {slots.Count - 1} more to {facts.Time(slots[^1].DueAt)}";
                yield return (slots[0].DueAt, $"{Say.Visible(round.Title)} {facts.Time(slots[0].DueAt)}{often}");
            }
        }
    }

    private static IEnumerable<(DateTimeOffset At, NoteLine Line)> ClockChange(ShiftFacts facts)
    {
        var (start, end) = (Calendar.ToSite(facts.Site, facts.Next.Start), Calendar.ToSite(facts.Site, facts.Next.End));
        if (start.Offset != end.Offset)
        {
            var hours = (facts.Next.End - facts.Next.Start).TotalHours.ToString("0.##", CultureInfo.InvariantCulture);
            yield return (facts.Next.Start, new NoteLine("clock", $"changes in the next shift, which lasts {hours} h"));
        }
    }
}
