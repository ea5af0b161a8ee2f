using System.Collections.Immutable;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

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
        var page = (RecordPage)session.Top;
        var readings = page.Standing;
        return Next.Of(readings.Count == 1 ? session.Open(Value(session, page.Record, readings[0])) : session.Open(new PickReadingPage(page.Record, readings, [], 0)));
    }

    /// <summary>A value typed into the wrong row or round is put right to "not taken", with a reason of the site's list.</summary>
    public static AskPage Value(Session session, JournalRecord record, Reading was) => new(
        $"{was.Point} {session.Site.FindPoint(was.Point)?.Description}: {Say.Reading(session.Site, was)}. What should it be?", "the value; '-' when it was not taken, or was typed into the wrong row", "",
        (asking, text, _) => Next.Of(string.IsNullOrWhiteSpace(text) ? asking.Say("give the value as it should have been")
            : text.Trim() == "-" ? asking.Open(NotTaken(asking, record, was))
            : Given(asking, record, new TypedReading(was.Point, text.Trim(), Place.Unknown))));

    private static PickPage NotTaken(Session session, JournalRecord record, Reading was) => new(
        $"{was.Point} was not taken, because", [.. session.Site.Reasons.NotTaken.Select(r => (r, ""))], null,
        (picking, i, _) => Next.Of(Given(picking, record, new TypedReading(was.Point, "-", Place.Unknown) { Why = picking.Site.Reasons.NotTaken[i] })));

    /// <summary>Beside others of the entry it waits for them: swapped end points are put right together.</summary>
    private static Session Given(Session asking, JournalRecord record, TypedReading right) =>
        asking.Asked() is { Top: PickReadingPage page } session ? session.Put(page.With(right)) : asking.Open(Why(record, [right]));

    public static AskPage Why(JournalRecord record, IReadOnlyList<TypedReading> right) => AskPage.Words(
        $"{string.Join(", ", right.Select(Words))}: why?", "a few words; both values stay",
        (asking, why) => Typed.Number(why, Place.Unknown, out _) is null
            ? Next.Of(asking, new WriteIt(new CorrectReadings(asking.By!, record.Seq, right, why)))
            : Next.Of(asking.Say($"{why} is no reason: why was it wrong? Esc leads back to another reading")));

    public static string Words(TypedReading right) => $"{right.Point} is put right to {right.Why ?? right.Text}";
}

/// <summary>Which readings of an entry are to be put right, and to what.</summary>
/// <param name="Right">What was given so far.</param>
internal sealed record PickReadingPage(JournalRecord Record, IReadOnlyList<Reading> Readings, ImmutableList<TypedReading> Right, int Selected) : Page
{
    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "this one", "Asks for its right value; on the last row, why.", (session, _, _) => Next.Of(Take(session, Of(session))), KeyName.Enter),
        KeyRow.Named("Up Down", "move", "Moves the mark.", (session, key, _) => Next.Of(session.Put(Of(session) with { Selected = Moving.Move(Of(session).Selected, key, Of(session).Rows, session.Leaf) })), Moving.Keys),
        UsualKeys.Back(),
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    /// <summary>The readings, and below them that this is all once one is given.</summary>
    private int Rows => Readings.Count + Math.Min(1, Right.Count);

    public PickReadingPage With(TypedReading right) =>
        this with { Right = Right.RemoveAll(r => r.Point == right.Point).Add(right), Selected = Readings.Count };

    public override Layout Draw(Session session) => new(
        [Line.Of($" Which reading of {Say.Ref(Record.Seq)} is to be put right?", Look.Strong), Line.Empty],
        [.. Readings.Select(r => Row(session, r)).Concat(Right.Count == 0 ? [] : ["that is all: say why"]).Select((text, i) => Line.Of($" {(i == Selected ? ">" : " ")} {text}", i == Selected ? Look.Chosen : Look.Plain))],
        Selected, Selected, []);

    private string Row(Session session, Reading reading)
    {
        var right = Right.Find(r => r.Point == reading.Point);
        return $"{TextWidth.Fit(reading.Point, 10)} {session.Site.FindPoint(reading.Point)?.Description}: {Say.Reading(session.Site, reading)}{(right is null ? "" : $"; put right to {right.Why ?? right.Text}")}";
    }

    private static Session Take(Session session, PickReadingPage page) => session.Open(
        page.Selected < page.Readings.Count ? RecordAsks.Value(session, page.Record, page.Readings[page.Selected]) : RecordAsks.Why(page.Record, page.Right));

    private static PickReadingPage Of(Session session) => (PickReadingPage)session.Top;
}
