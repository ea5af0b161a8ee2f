namespace Logbook.Handover;

/// <summary>Who was due in the shift by pattern and roster, and who wrote or took the line in it.</summary>
internal static class WhoWasThere
{
    public static NoteSection Of(ShiftFacts facts) => NoteSection.Of(
        "there",
        "WHO WAS THERE",
        ShiftDuty.Of(facts.Desk, facts.Shift.Start, facts.Shift.End).Where(d => d.Shift.Start == facts.Shift.Start).SelectMany(d => Lines(facts, d)));

    private static IEnumerable<NoteLine> Lines(ShiftFacts facts, ShiftDuty duty)
    {
        (string Label, IReadOnlyList<string> Codes)[] rows = [("due", duty.Due), ("wrote", duty.Wrote), ("took line", duty.Took)];
        return
        [
            .. rows.Where(r => r.Codes.Count > 0).Select(r => new NoteLine(r.Label, string.Join(", ", r.Codes.Select(c => Say.Person(facts.Site, c))))),
            .. duty.Differs is { } differs ? [new NoteLine("differs", differs)] : Array.Empty<NoteLine>(),
        ];
    }
}
