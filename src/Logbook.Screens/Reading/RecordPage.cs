using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>One record in full.</summary>
/// <param name="Words">The same in one line of words.</param>
/// <param name="Signed">Of a step of the handover, what was signed.</param>
/// <param name="Corrections">Of an entry, what was put right later.</param>
internal sealed record RecordPage(JournalRecord Record, string Words, IReadOnlyList<NoteSection> Signed, IReadOnlyList<JournalRecord> Corrections, int Scroll) : Page, IScrolled
{
    private static readonly KeyTable Table = new(
        Scrolling.Keys,
        KeyRow.Letter(']', "related", "All records that belong to this one.", (session, _) => RelatedPage.Ask(session, Of(session).Record.Seq)),
        KeyRow.Letter('c', "correct", "Puts a reading of this entry right; both values stay.", (session, _) => RecordAsks.Correct(session)) with { WhyNot = RecordAsks.NoReadings },
        SecondReading.Key(session => (Of(session).Record.Seq, Of(session).Record.Body is Entry entry ? Of(session).Found(entry).Findings : [])),
        KeyRow.Letter('m', "remark", "A remark on this record.", (session, _) => Next.Of(session.Open(RecordAsks.Remark(Of(session).Record.Seq)))) with { WhyNot = RecordAsks.NobodyTypes },
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    /// <summary>An entry's readings as they stand after all corrections.</summary>
    public IReadOnlyList<Reading> Standing =>
        Corrections.Select(c => (Correction)c.Body).Aggregate(((Entry)Record.Body).Readings, (readings, correction) => correction.PutInto(readings));

    /// <summary>The entry with what is computed and found of it after its last correction; what was typed first stays beside.</summary>
    public Entry Found(Entry entry) => Corrections is [.., { Body: Correction last }] ? entry with { Results = last.Results, Findings = last.Findings } : entry;

    /// <summary>The record on the screen; read again, it takes its own place.</summary>
    public static Session Read(Session session, RecordRead read) => session.Top is RecordPage shown && shown.Record.Seq == read.Record.Seq
        ? session.Put(shown with { Corrections = read.Corrections })
        : session.Open(new RecordPage(read.Record, read.Words, read.Signed, read.Corrections, 0));

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([.. RecordLines.Head(session, Record)], RecordLines.Body(session, this), Scroll, Scroll, []) { Top = Scroll };

    private static RecordPage Of(Session session) => (RecordPage)session.Top;
}
