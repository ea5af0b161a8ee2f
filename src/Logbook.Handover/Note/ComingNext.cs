using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Handover;

/// <summary>What falls due until the end of the next shift: dates of open items, rounds, a change of the clock.</summary>
internal static class ComingNext
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "coming",
        "COMING",
        Dates(facts).Concat(facts.Site.Rounds.SelectMany(r => Round(facts, r))).Concat(ClockChange(facts)).OrderBy(x => x.At).Select(x => x.Line));

    private static IEnumerable<(DateTimeOffset At, NoteLine Line)> Dates(ShiftFacts facts) =>
        facts.State.Carried.Where(i => i.Until is { } until && until >= facts.AsOf && until <= facts.Next.End)
            .Select(i => (i.Until!.Value, new NoteLine(facts.Time(i.Until!.Value), $"{Say.Visible(i.ItemKind)} ends, {Say.Equipment(facts.Site, i.On)}: {Say.Visible(i.Text)} {Say.Ref(i.Id)}")));

    private static IEnumerable<(DateTimeOffset At, NoteLine Line)> Round(ShiftFacts facts, Round round)
    {
        var slots = Calendar.Slots(facts.Site, round, facts.Next.Start, facts.Next.End).ToList();
        if (slots.Count > 0)
        {
            var often = slots.Count == 1 ? "" : $"; {slots.Count} times, last {facts.Time(slots[^1].DueAt)}";
            var checks = Say.Count(slots.Max(s => s.Points.Count), "check");
            yield return (slots[0].DueAt, new NoteLine(facts.Time(slots[0].DueAt), $"{Say.Visible(round.Title)}, {checks}{often}"));
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
