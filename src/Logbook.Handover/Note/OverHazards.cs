using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>
/// What could hurt by a reading of the shift and does so no longer: gas that is gone, a leak that runs no more, a trip or an
/// eyewash that was seen bad. It stands under what can hurt, once: of its kind it must not be said that none is recorded.
/// </summary>
internal static class OverHazards
{
    public static IEnumerable<NoteLine> Of(ShiftFacts facts) => facts.Excursions.Select(e => (Excursion: e, Word: WordOf(facts, e))).Where(x => x.Word is not null)
        .OrderBy(x => Hazards.Words.ToList().IndexOf(x.Word!)).ThenBy(x => x.Excursion.First)
        .Select(x => new NoteLine(x.Word!, $"{(x.Excursion.Over ? "over" : "was")}: {Text(facts, x.Word!, x.Excursion)}"));

    /// <summary>What it was, and of gas what nobody has looked at since.</summary>
    public static string Text(ShiftFacts facts, string word, Excursion excursion) => excursion.Plain + (word == "gas" ? OtherHeads(facts, excursion) : "");

    /// <summary>One head that is clear again says nothing of a place where nobody has read since.</summary>
    private static string OtherHeads(ShiftFacts facts, Excursion gas) =>
        facts.Site.Points.Where(p => p.Unit.Name == "ppm" && p.Tag != gas.Point && !(facts.State.Latest.GetValueOrDefault(p.Tag)?.At >= gas.First)).ToList() is { Count: > 0 } unread
            ? $" NOT READ since it began: {string.Join("; ", unread.Select(p => $"{Say.Visible(p.Description)} ({Say.Visible(p.Tag)}){(facts.State.Latest.GetValueOrDefault(p.Tag) is { } last ? $", last {facts.Time(last.At)}" : "")}"))}." : "";

    /// <summary>The word of a hazard that is not there any more; null for what never was one, or stands.</summary>
    public static string? WordOf(ShiftFacts facts, Excursion excursion) =>
        (excursion.Code.StartsWith("limit.", StringComparison.Ordinal) || excursion.Code.StartsWith("choice.", StringComparison.Ordinal))
        && excursion.Point is { } tag && facts.Site.FindPoint(tag) is { } point && Hazards.WordOf(point, excursion.Worst) is { } word
        && !facts.State.Findings.GetValueOrDefault(tag, []).Exists(f => Hazards.WordOf(point, f.Finding) is not null) ? word : null;
}
