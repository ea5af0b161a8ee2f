using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>Correcting and remarking from a record.</summary>
internal static class RecordAsks
{
    public static string? NobodyTypes(Session session) => session.By is null ? "say first who is typing: i on Now" : null;

    public static string? NoReadings(Session session) =>
        ((RecordPage)session.Top).Record.Body is not Entry { Readings.Count: > 0 } ? "only an entry has readings" : NobodyTypes(session);

    public static AskPage Remark(long seq) => new(
        $"Remark on {Say.Ref(seq)}", "a few words", "", (asking, text, _) => Next.Of(asking, new WriteIt(new AddRemark(asking.By!, text, seq))));

    /// <summary>Which reading, when the record on top has several.</summary>
    public static Next Correct(Session session)
    {
        var record = ((RecordPage)session.Top).Record;
        var readings = ((Entry)record.Body).Readings;
        return Next.Of(readings.Count == 1 ? session.Open(Value(session, record, readings[0])) : session.Open(new PickReadingPage(record, readings, 0)));
    }

    /// <summary>A value typed into the wrong row or round is put right to "not taken", with a reason of the site's list.</summary>
    public static AskPage Value(Session session, JournalRecord record, Reading was) => new(
        $"{was.Point} {session.Site.FindPoint(was.Point)?.Description}: {Say.Reading(session.Site, was)}. What should it be?", "the value; '-' when it was not taken, or was typed into the wrong row", "",
        (asking, text, _) => Next.Of(string.IsNullOrWhiteSpace(text) ? asking.Say("give the value as it should have been")
            : text.Trim() == "-" ? asking.Open(NotTaken(asking, record, was))
            : asking.Open(Why(record, was, text.Trim(), null))));

    private static PickPage NotTaken(Session session, JournalRecord record, Reading was) => new(
        $"{was.Point} was not taken, because", [.. session.Site.Reasons.NotTaken.Select(r => (r, ""))], null,
        (picking, i, _) => Next.Of(picking.Open(Why(record, was, "-", picking.Site.Reasons.NotTaken[i]))));

    private static AskPage Why(JournalRecord record, Reading was, string text, string? notTaken) => AskPage.Words(
        $"{was.Point} is put right to {notTaken ?? text}: why?", "a few words; both values stay",
        (asking, why) => Next.Of(asking, new WriteIt(new CorrectReading(asking.By!, record.Seq, was.Point, text, notTaken, why))));
}

/// <summary>Which reading of an entry is to be put right.</summary>
internal sealed record PickReadingPage(JournalRecord Record, IReadOnlyList<Reading> Readings, int Selected) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "this one", "Asks for its right value.", (session, _, _) => Next.Of(session.Back().Open(RecordAsks.Value(session, Of(session).Record, Of(session).Readings[Of(session).Selected]))), KeyName.Enter),
        KeyRow.Named("Up Down", "move", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Of(session) with { Selected = Moving.Move(Of(session).Selected, key, Of(session).Readings.Count, session.Leaf) })), Moving.Keys),
        UsualKeys.Back());

    public override KeyTable Keys => Table;

    public override Layout Draw(Session session) => new(
        [Line.Of($" Which reading of {Say.Ref(Record.Seq)} is to be put right?", Look.Strong), Line.Empty],
        [.. Readings.Select((r, i) => Line.Of($" {(i == Selected ? ">" : " ")} {TextWidth.Fit(r.Point, 10)} {session.Site.FindPoint(r.Point)?.Description}: {Say.Reading(session.Site, r)}", i == Selected ? Look.Chosen : Look.Plain))],
        Selected, Selected, []);

    private static PickReadingPage Of(Session session) => (PickReadingPage)session.Top;
}
