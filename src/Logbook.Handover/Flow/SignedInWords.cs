using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>A step of the handover in full: what exactly was signed, what was declared, which pages were seen, what was asked.</summary>
public static class SignedInWords
{
    /// <summary>Sections of words; none for a record that its line tells whole.</summary>
    public static IReadOnlyList<NoteSection> Of(Desk desk, JournalRecord record) => record.Body switch
    {
        HandoverPrepared p =>
        [
            Section(desk, record, p.Signed, Frozen(p.Note, p.NoteHash),
            [
                .. BeforeSigning.Declared(p.Declared, p.Changes).Select(words => new NoteLine("declared", words)),
                .. p.IfThen.Select(text => new NoteLine("if, then", Say.Visible(text))), .. p.Words.Select(text => new NoteLine("own words", Say.Visible(text))),
            ]),
            .. Note(p.Note),
        ],
        HandoverAccepted a =>
        [
            Section(desk, record, a.Signed, Frozen(a.Note, a.NoteHash),
            [
                new NoteLine("from", a.From is { } from ? Say.Person(desk.Site, from) : "nobody held it"),
                .. a.First.Select(text => new NoteLine("checks", Say.Visible(text))),
                .. a.Reservation is { } reservation ? [new NoteLine("reservation", Say.Visible(reservation))] : Array.Empty<NoteLine>(),
                .. a.Unattended is { } unattended ? [new NoteLine("UNATTENDED", Say.Visible(unattended))] : Array.Empty<NoteLine>(),
                .. a.Asked.Select(text => new NoteLine("was asked", Say.Visible(text))),
                .. (a.Missed ?? []).Select(text => new NoteLine("read again", $"answered otherwise than the page at first: {Say.Visible(text)}")),
                .. Pages(desk, record, a.Prepared),
            ]),
            .. Note(a.Note),
        ],
        HandoverRelief relief => [Section(desk, record, relief.Signed, null, [new NoteLine(relief.Mode, Say.Visible(relief.Words))])],
        HandoverCountersigned c => [Section(desk, record, c.Signed, null, [new NoteLine("signs for", Say.Ref(c.Target)), new NoteLine("found", Say.Visible(c.Why))])],
        _ => [],
    };

    private static NoteSection Section(Desk desk, JournalRecord record, Signed signed, NoteLine? note, IEnumerable<NoteLine> lines) => new("signed", $"RECORD {record.Seq}, WHAT WAS SIGNED",
    [
        new NoteLine("signed", $"\"{Say.Visible(signed.Means)}\", {Say.Person(desk.Site, record.By)} {Say.Day(desk.Site, record.At)}{(signed.How == "none" ? "; no PIN was asked" : StepWords.By(desk.Site, signed))}"),
        .. lines,
        .. note is null ? [] : new[] { note },
    ]);

    private static NoteLine Frozen(FrozenNote note, string hash) => new("note", $"as it stood, drawn {note.Drawn}: the lines below, their SHA-256 {hash}");

    private static IEnumerable<NoteSection> Note(FrozenNote note) =>
    [
        .. note.TakeLonger.Count == 0 ? [] : new[] { new NoteSection("take-longer", "TAKE LONGER", [.. note.TakeLonger.Select(why => new NoteLine("because", why))]) },
        .. Freezing.Sections(note),
        .. note.Cautions.Count == 0 ? [] : new[] { new NoteSection("cautions", "CAUTIONS", [.. note.Cautions.Select(c => new NoteLine("caution", $"{c.Hazard}: {c.Text}"))]) },
    ];

    /// <summary>The pages that were shown to the signer since the note was prepared, or since the line last changed hands.</summary>
    private static IEnumerable<NoteLine> Pages(Desk desk, JournalRecord accepted, long? prepared)
    {
        var before = prepared is { } seq ? desk.Store.Read(seq) : desk.Store.Between(accepted.At.AddHours(-12), accepted.At.AddMilliseconds(1));
        var seen = before.TakeWhile(r => r.Seq < accepted.Seq).Where(r => r.Body is HandoverSeen && Handed.Same(r.By, accepted.By)).ToList();
        return seen.Count == 0 ? [new NoteLine("pages seen", "none recorded")] : seen.Select(r => new NoteLine("page seen", $"{Say.Visible(((HandoverSeen)r.Body).Page)}, {Say.Time(desk.Site, r.At, accepted.At)}, up to record {((HandoverSeen)r.Body).UpTo} {Say.Ref(r.Seq)}"));
    }
}
