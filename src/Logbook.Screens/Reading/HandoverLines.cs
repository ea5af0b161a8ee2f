using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What a step of the handover kept beside its one line of words: what was declared and signed, and the note as it stood.</summary>
internal static class HandoverLines
{
    public static IReadOnlyList<Line> Of(Session session, RecordBody body) => body switch
    {
        HandoverPrepared p =>
        [
            .. p.Declared.GroupBy(d => d.Value, d => d.Key, StringComparer.Ordinal).SelectMany(g => Row(session, g.Key.Replace('-', ' '), string.Join(", ", g))),
            .. p.IfThen.SelectMany(l => Row(session, "if, then", l)), .. p.Words.SelectMany(l => Row(session, "own words", l)),
            .. Signed(session, p.Signed), .. Note(session, p.Note),
        ],
        HandoverAccepted a =>
        [
            .. a.First.SelectMany(l => Row(session, "first", l)), .. Row(session, "reserving", a.Reservation), .. Row(session, "alone", a.Unattended),
            .. a.Asked.SelectMany(l => Row(session, "asked", l)), .. Row(session, "prepared", a.Prepared is { } seq ? Say.Ref(seq) : null),
            .. Signed(session, a.Signed), .. Note(session, a.Note),
        ],
        HandoverRelief r => Signed(session, r.Signed),
        HandoverCountersigned c => [.. Row(session, "signs for", Say.Ref(c.Target)), .. Row(session, "found", c.Why), .. Signed(session, c.Signed)],
        _ => [],
    };

    private static IReadOnlyList<Line> Signed(Session session, Signed signed) => [.. Row(session, "means", $"\"{signed.Means}\"")];

    private static IEnumerable<Line> Note(Session session, FrozenNote note) =>
    [
        Line.Empty,
        Line.Of($" The note as it stood: {note.Period}, drawn {note.Drawn}", Look.Strong),
        .. note.TakeLonger.SelectMany(l => Row(session, "longer", l)),
        .. note.Sections.SelectMany(s => s.Lines.SelectMany(l => Gutter.Lines(l.Label, Look.Strong, l.Text, session.Width)).Prepend(Line.Of(new Span($" {s.Title}", Look.Strong), new Span($"  {s.Beside}", Look.Faint)))),
        .. note.Cautions.SelectMany(c => Row(session, "caution", $"{c.Hazard}: {c.Text}")),
    ];

    private static IEnumerable<Line> Row(Session session, string word, string? text) => string.IsNullOrEmpty(text) ? [] : Gutter.Lines(word, Look.Strong, text, session.Width);
}
