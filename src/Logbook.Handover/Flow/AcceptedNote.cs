using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>A note that was taken over: its lines stand as they were accepted, and what came later stands below them for both crews.</summary>
internal static class AcceptedNote
{
    /// <summary>The acceptance of a shift's note; null when there is none.</summary>
    public static JournalRecord? Find(Desk desk, ShiftInstance shift) =>
        desk.Store.Between(shift.Start, shift.End + ((shift.End - shift.Start) / 2)).LastOrDefault(r => Closes(shift, r));

    /// <summary>
    /// True for the acceptance that ended the shift. One in its first half took the line for the shift itself (the first of a
    /// log, or after nobody was there): what happened since would be missing from its note.
    /// </summary>
    public static bool Closes(ShiftInstance shift, JournalRecord record) =>
        record.Body is HandoverAccepted accepted && accepted.Note.Shift == shift.Id && record.At - shift.Start >= (shift.End - shift.Start) / 2;

    /// <summary>The acceptance with which the line was held last in these facts: it may have come a little before their shift began.</summary>
    public static JournalRecord? LastIn(ShiftFacts facts) =>
        facts.Desk.Store.Between(facts.Shift.Start - ((facts.Next.End - facts.Next.Start) / 2), facts.AsOf.AddTicks(1)).LastOrDefault(r => r.Body is HandoverAccepted);

    public static HandoverNote Of(Desk desk, ShiftInstance shift, JournalRecord record)
    {
        var frozen = ((HandoverAccepted)record.Body).Note;
        var words = HandoverWords.Of(desk, shift, record);
        return new HandoverNote
        {
            Site = Say.Visible(desk.Site.Name),
            ShiftId = frozen.Shift,
            Period = frozen.Period,
            DrawnAt = $"{Say.Day(desk.Site, record.At)}, as it was taken over",
            TakeLonger = ((HandoverAccepted)record.Body).Reservation is { } but ? [.. frozen.TakeLonger, $"taken over with a reservation: {Say.Visible(but)}"] : frozen.TakeLonger,
            Sections = [.. Freezing.Sections(frozen), .. After(desk, shift, record).ToList() is { Count: > 0 } later ? [new NoteSection("after", "AFTER IT WAS TAKEN OVER", later)] : Array.Empty<NoteSection>()],
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

    // How far back an acceptance is looked for when the line was last taken in another way.
    private static readonly TimeSpan Back = TimeSpan.FromDays(31);

    /// <summary>The acceptance of that number, else the last one; null when there is none.</summary>
    public static JournalRecord? Find(Desk desk, long? seq)
    {
        static JournalRecord? Accepted(JournalRecord? record) => record?.Body is HandoverAccepted ? record : null;
        return seq is not null
            ? Accepted(desk.Store.Read(seq.Value).FirstOrDefault(r => r.Seq == seq))
            : Accepted(desk.State.Line.Holder is { } holder ? desk.Store.Read(holder.Seq).FirstOrDefault() : null)
                ?? desk.Store.Between(desk.Now - Back, desk.Now.AddTicks(1)).LastOrDefault(r => r.Body is HandoverAccepted);
    }

    /// <summary>The shift that an accepted note is of: the running one then, or the one that had just ended.</summary>
    public static ShiftInstance ShiftOf(Desk desk, JournalRecord accepted)
    {
        var site = SiteInForce.At(desk, accepted.At);
        var running = Calendar.ShiftAt(site, accepted.At);
        return running.Id == ((HandoverAccepted)accepted.Body).Note.Shift ? running : Calendar.ShiftAt(site, running.Start.AddTicks(-1));
    }

    /// <summary>
    /// What was written later about the time that the note tells of: corrections of its entries, what came late, and what
    /// happened between an early change and the shift's end.
    /// </summary>
    private static IEnumerable<NoteLine> After(Desk desk, ShiftInstance shift, JournalRecord accepted) =>
        from record in JournalSpan.Touching(desk, shift.Start, Until(shift, accepted))
        where record.Seq > accepted.Seq && !SincePrepared.IsStep(record.Body) && Tells(desk, shift, record, accepted)
        select new NoteLine(Say.Time(desk.Site, record.Entered, shift.End), $"{LogLine.Of(desk, record).Words}. {Say.Person(desk.Site, record.By)} {Say.Ref(record.Seq)}");

    private static bool Tells(Desk desk, ShiftInstance shift, JournalRecord record, JournalRecord accepted) => record.Body switch
    {
        Correction correction => correction.Target < accepted.Seq && desk.Store.Read(correction.Target).FirstOrDefault() is { } entry && entry.At >= shift.Start,
        _ => record.At >= shift.Start && record.At < Until(shift, accepted),
    };

    private static DateTimeOffset Until(ShiftInstance shift, JournalRecord accepted) => accepted.At > shift.End || !Closes(shift, accepted) ? accepted.At : shift.End;
}
