using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What people signed and said about the handover of one shift, as the note prints it.</summary>
internal sealed record HandoverWords(string Gave, string Holds, IReadOnlyList<NoteLine> OwnWords, IReadOnlyList<string> Signatures)
{
    /// <summary>Of the handover that ended the shift, or will.</summary>
    public static HandoverWords Of(Desk desk, ShiftInstance shift)
    {
        var steps = Steps(desk, shift);
        return Of(desk, shift, steps, steps.FindLast(r => AcceptedNote.Closes(shift, r)));
    }

    /// <summary>Of one acceptance of the shift's note; a shift may have several.</summary>
    public static HandoverWords Of(Desk desk, ShiftInstance shift, JournalRecord accepted) => Of(desk, shift, Steps(desk, shift), accepted);

    private static List<JournalRecord> Steps(Desk desk, ShiftInstance shift)
    {
        // From the middle of the shift to the middle of the next: the change itself may come late.
        var half = (shift.End - shift.Start) / 2;
        return [.. desk.Store.Between(shift.Start, shift.End + half).Where(r => SincePrepared.IsStep(r.Body))];
    }

    private static HandoverWords Of(Desk desk, ShiftInstance shift, List<JournalRecord> steps, JournalRecord? accepted)
    {
        // Handovers inside the shift, before this one: what was said and signed there stays in the note.
        var earlier = steps.FindAll(r => r.Body is HandoverAccepted a && a.Note.Shift == shift.Id && !AcceptedNote.Closes(shift, r) && (accepted is null || r.Seq < accepted.Seq));
        var given = steps.FindAll(r => r.Body is HandoverPrepared && earlier.Exists(e => Prepared(e) == r.Seq));
        // What was prepared before one of those and not taken over with it waits for nobody: it was prepared anew.
        var prepared = steps.FindLast(r => r.Body is HandoverPrepared p && p.Note.Shift == shift.Id && !given.Contains(r) && (accepted is null ? earlier.TrueForAll(e => e.Seq < r.Seq) : Prepared(accepted) == r.Seq));
        // What belongs to the next handover begins when that is prepared.
        var next = accepted is null ? null : steps.Find(r => r.Body is HandoverPrepared && r.Seq > accepted.Seq);
        List<JournalRecord> signed = [.. earlier, .. given, .. new[] { prepared, accepted }.OfType<JournalRecord>()];
        var own = steps.FindAll(r => (next is null || r.Seq < next.Seq || r.Body is HandoverCountersigned) && InThisHandover(r, shift, prepared, accepted, signed));
        return new HandoverWords(
            prepared is null ? "" : $"{Say.Person(desk.Site, prepared.By)}, prepared {Say.Time(desk.Site, prepared.At, shift.End)}",
            accepted is null ? "" : $"{Say.Person(desk.Site, accepted.By)}, from {Say.Time(desk.Site, accepted.At, shift.End)}",
            [
                .. Words(desk.Site, accepted), .. Words(desk.Site, prepared), .. Asked(desk, own, shift),
                .. earlier.Where(e => Prepared(e) is not null).SelectMany(e => Words(desk.Site, e).Concat(Words(desk.Site, given.Find(g => g.Seq == Prepared(e))))),
            ],
            [.. own.Select(r => Signature(desk, r, shift)).OfType<string>()]);
    }

    private static long? Prepared(JournalRecord accepted) => ((HandoverAccepted)accepted.Body).Prepared;

    /// <summary>Steps between the shift's own taking over and the next one's.</summary>
    private static bool InThisHandover(JournalRecord step, ShiftInstance shift, JournalRecord? prepared, JournalRecord? accepted, List<JournalRecord> signed) => step.Body switch
    {
        HandoverPrepared or HandoverAccepted => signed.Contains(step),
        HandoverQuestion or HandoverAnswer => prepared is not null && step.Seq > prepared.Seq,
        HandoverCountersigned c => c.Signed.Means != Signing.Allowed, // that is of what is carried, not of a handover
        _ => step.At < shift.End || (prepared is not null && step.Seq > prepared.Seq && (accepted is null || step.Seq < accepted.Seq)),
    };

    private static IEnumerable<NoteLine> Words(Site site, JournalRecord? record)
    {
        var (lines, reservation) = record?.Body switch
        {
            HandoverAccepted a => (a.First, a.Reservation),
            HandoverPrepared p => ([.. p.IfThen, .. p.Words], null),
            _ => ((IReadOnlyList<string>)[], null),
        };
        for (var i = 0; i < lines.Count; i++)
        {
            yield return new NoteLine(i == 0 ? Say.Person(site, record!.By) : "", $"{i + 1} {Say.Visible(lines[i])}");
        }

        if (reservation is not null)
        {
            yield return new NoteLine("reservation", $"{Say.Visible(reservation)} ({Say.Person(site, record!.By)})");
        }
    }

    private static IEnumerable<NoteLine> Asked(Desk desk, List<JournalRecord> steps, ShiftInstance shift) =>
        from asked in steps
        where asked.Body is HandoverQuestion
        let answer = steps.Find(r => r.Body is HandoverAnswer a && a.Question == asked.Seq)
        select new NoteLine("asked", $"{Say.Person(desk.Site, asked.By)}: {Say.Visible(((HandoverQuestion)asked.Body).Text)} {Answer(desk.Site, answer, shift)} {Say.Ref(asked.Seq)}");

    private static string Answer(Site site, JournalRecord? record, ShiftInstance shift) => record?.Body is HandoverAnswer a
        ? $"{Say.Person(site, a.From)}{(a.Aloud ? ", aloud" : "")} {Say.Time(site, record.At, shift.End)}: {Say.Visible(a.Text)}"
        : "NO ANSWER YET";

    private static string? Signature(Desk desk, JournalRecord record, ShiftInstance shift)
    {
        var who = $"{Say.Person(desk.Site, record.By)} {Say.Time(desk.Site, record.At, shift.End)}";
        return record.Body switch
        {
            HandoverRefused or HandoverNotYet or HandoverContinued => $"{who}: {StepWords.Of(desk.Site, record)} {Say.Ref(record.Seq)}",
            HandoverRelief r => $"{who}: {StepWords.Of(desk.Site, record)}; \"{r.Signed.Means}\" {Say.Ref(record.Seq)}",
            HandoverCountersigned c => $"{who}: {StepWords.Of(desk.Site, record)}; \"{c.Signed.Means}\" {Say.Ref(record.Seq)}",
            HandoverPrepared p => $"{who}: \"{p.Signed.Means}\"{StepWords.By(desk.Site, p.Signed)}; note {p.NoteHash[..12]} {Say.Ref(record.Seq)}",
            HandoverAccepted a => $"{who}: \"{a.Signed.Means}\"{StepWords.By(desk.Site, a.Signed)}{(a.Unattended is null ? "" : $"; UNATTENDED: {Say.Visible(a.Unattended)}")}{StepWords.Missed(a)}; note {a.NoteHash[..12]} {Say.Ref(record.Seq)}",
            PersonChanged { Change: "confirmed" } => $"{who}: {StepWords.Of(desk.Site, record)} {Say.Ref(record.Seq)}",
            _ => null,
        };
    }
}
