using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What is different: equipment that does not run, temporary changes, findings of the shift, corrected readings.</summary>
internal static class NotNormal
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "not-normal",
        "NOT NORMAL",
        [.. Standing(facts), .. Excursions(facts), .. Temporary(facts), .. Corrections(facts)]);

    /// <summary>What left its limits, but for what stands under what can hurt.</summary>
    public static IEnumerable<NoteLine> Excursions(ShiftFacts facts) =>
        Excursion.Of(facts).Where(e => !StandsAbove(facts, e)).Select(e => new NoteLine(Say.Visible(e.Point ?? "line"), e.Text));

    /// <summary>A finding that stands under what can hurt is not said twice.</summary>
    private static bool StandsAbove(ShiftFacts facts, Excursion excursion) =>
        excursion.Point is { } tag && facts.Site.FindPoint(tag) is { } point
        && facts.State.Findings.GetValueOrDefault(tag) is { } open && open.Exists(f => Hazards.WordOf(point, f.Finding.Level) is not null);

    /// <summary>Items that tell what is different now, not what remains to be done.</summary>
    public static bool IsTemporary(CarriedItem item) => item.ItemKind is "temporary-change" or "out-of-service";

    private static IEnumerable<NoteLine> Standing(ShiftFacts facts) =>
        facts.State.Equipment.Values.Where(e => e.State is not "running" and not "acid").OrderBy(e => e.Since).ThenBy(e => e.Seq).Select(e => new NoteLine(
            Say.Visible(e.State),
            $"{Say.Equipment(facts.Site, e.Equipment)} since {facts.Time(e.Since)}{(string.IsNullOrWhiteSpace(e.Why) ? "" : ", " + Say.Visible(e.Why))}. {Say.Person(facts.Site, e.By)} {Say.Ref(e.Seq)}"));

    private static IEnumerable<NoteLine> Temporary(ShiftFacts facts) =>
        facts.State.Carried.Where(IsTemporary).Select(i => StillOpen.Line(facts, i));

    private static IEnumerable<NoteLine> Corrections(ShiftFacts facts) =>
        facts.Records.Where(r => r.Body is Correction).Select(r => new NoteLine(
            "corrected",
            $"{LogLine.Of(facts.Desk, r).Words}. {Say.Person(facts.Site, r.By)} {facts.Time(r.At)} {Say.Ref(r.Seq)}"));
}
