using System.Globalization;

namespace Logbook.Handover;

/// <summary>Which limits were left in the week, the longest first, by crew: the crews share the plant and its weather.</summary>
internal static class LimitsLeft
{
    public static NoteSection Of(WeekFacts week) => NoteSection.Of(
        "limits-left",
        "LIMITS LEFT",
        LimitUse.Rows(week.Span).Where(r => r.Beyond > 0).OrderByDescending(r => r.Hours).ThenByDescending(r => r.Times).Select(r => new NoteLine(
            Say.Visible(r.Point),
            string.Create(CultureInfo.InvariantCulture, $"{r.Limit}: {Say.Count(r.Times, "time")}, {r.Hours:0.#} h from reading to reading; {r.Beyond} of {r.Readings} readings; by crew {string.Join(", ", r.Crews)}"))));
}
