using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A note that was taken over: its lines stand as they were accepted, and what came later stands below them for both crews.</summary>
internal static class AcceptedNote
{
    /// <summary>The acceptance of a shift's note; null when there is none.</summary>
    public static JournalRecord? Find(Desk desk, ShiftInstance shift) =>
        desk.Store.Between(shift.Start, shift.End + ((shift.End - shift.Start) / 2)).LastOrDefault(r => r.Body is HandoverAccepted a && a.Note.Shift == shift.Id);

    public static HandoverNote Of(Desk desk, ShiftInstance shift, JournalRecord record)
    {
        var frozen = ((HandoverAccepted)record.Body).Note;
        var words = HandoverWords.Of(desk, shift);
        return new HandoverNote
        {
            Site = Say.Visible(desk.Site.Name),
            ShiftId = frozen.Shift,
            Period = frozen.Period,
            DrawnAt = $"{Say.Day(desk.Site, record.At)}, as it was taken over",
            TakeLonger = frozen.TakeLonger,
            Sections = [.. Freezing.Sections(frozen), NoteSection.Of("after", "AFTER IT WAS TAKEN OVER", After(desk, shift, record))],
            Cautions = Freezing.Cautions(frozen),
            Trends = Trending.Of(ShiftFacts.Of(desk, shift.Start)),
            Records = desk.State.Head.Seq,
            Head = desk.State.Head.Hash,
            Gave = words.Gave,
            Holds = words.Holds,
            OwnWords = words.OwnWords,
            Signatures = words.Signatures,
        };
    }

    /// <summary>What was written later about the time that the note tells of: corrections of its entries, and what came late.</summary>
    private static IEnumerable<NoteLine> After(Desk desk, ShiftInstance shift, JournalRecord accepted) =>
        from record in JournalSpan.Touching(desk, shift.Start, accepted.At)
        where record.Seq > accepted.Seq && !SincePrepared.IsStep(record.Body) && Tells(desk, shift, record, accepted)
        select new NoteLine(Say.Time(desk.Site, record.Entered, shift.End), $"{LogLine.Of(desk, record).Words}. {Say.Person(desk.Site, record.By)} {Say.Ref(record.Seq)}");

    private static bool Tells(Desk desk, ShiftInstance shift, JournalRecord record, JournalRecord accepted) => record.Body switch
    {
        Correction correction => correction.Target < accepted.Seq && desk.Store.Read(correction.Target).FirstOrDefault() is { } entry && entry.At >= shift.Start,
        _ => record.At >= shift.Start && record.At < accepted.At,
    };
}
