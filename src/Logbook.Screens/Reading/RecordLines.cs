using System.Globalization;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A record's fields in lines.</summary>
internal static class RecordLines
{
    public static IEnumerable<Line> Head(Session session, JournalRecord record) =>
    [
        Line.Of(FormattableString.Invariant($" Record {record.Seq}: {record.Kind}"), Look.Strong),
        .. TextWidth.Wrap($"{Say.Day(session.Site, record.At)}, typed {Say.Time(session.Site, record.Entered, record.At)} by {Say.Person(session.Site, record.By)} ({record.By}) at {record.Terminal}, shift {record.Shift}", session.Width - 2).Select(l => Line.Of(" " + l)),
        Line.Empty,
    ];

    public static IReadOnlyList<Line> Body(Session session, RecordPage page) => page.Record.Body switch
    {
        Entry entry => [.. page.Corrections.SelectMany(c => Field(session, "put right", PutRight(session, page.Record, c))), .. OfEntry(session, page.Record, page.Found(entry), page.Corrections)],
        Correction correction =>
        [
            .. Field(session, "corrects", $"{Say.Ref(correction.Target)}: {correction.Why}"),
            .. correction.Readings.SelectMany(r => OfReading(session, page.Record, r, [])),
            .. OfResults(session, correction.Results),
            .. correction.Findings.SelectMany(f => FindingLines.Of(session, f)),
        ],
        Remark remark => [.. Field(session, "on", remark.On is { } on ? Say.Equipment(session.Site, on) : null), .. Field(session, "remark", remark.Text), .. Field(session, "see", remark.Related is { } seq ? Say.Ref(seq) : null)],
        EquipmentStateChanged state =>
        [
            .. Field(session, "equipment", Say.Equipment(session.Site, state.Equipment)), .. Field(session, "state", state.State),
            .. Field(session, "since", Say.Day(session.Site, state.Since)), .. Field(session, "why", state.Why),
        ],
        Carry carry =>
        [
            .. Field(session, "kind", Say.Kind(carry.ItemKind)), .. Field(session, "on", Say.Equipment(session.Site, carry.On)), .. Field(session, "text", carry.Text),
            .. Field(session, "until", carry.Until is { } until ? Say.Day(session.Site, until) : null),
            .. Field(session, "owner", carry.Owner is { } owner ? Say.Person(session.Site, owner) : null),
            .. carry.Fields.OrderBy(f => f.Key, StringComparer.Ordinal).SelectMany(f => Field(session, f.Key, f.Value)),
        ],
        CarryClosed closed => [.. Field(session, "closes", Say.Ref(closed.Id)), .. Field(session, "own lock", closed.Lock), .. Field(session, "why", closed.Why)],
        SiteAdopted adopted => [.. Field(session, "why", adopted.Why), .. (adopted.Changes ?? []).SelectMany(c => Field(session, "changes", c)), .. Field(session, "files", string.Join(", ", adopted.Files.Keys.Order(StringComparer.Ordinal)))],
        _ => [.. Field(session, "says", page.Words), .. page.Signed.SelectMany(s => OfSection(session, s))],
    };

    private static string PutRight(Session session, JournalRecord record, JournalRecord correction)
    {
        var body = (Correction)correction.Body;
        return $"{string.Join(", ", body.Readings.Select(r => $"{r.Point} {Say.Reading(session.Site, r)}"))}: {body.Why}. {Say.Person(session.Site, correction.By)} {Say.Time(session.Site, correction.At, record.At)} {Say.Ref(correction.Seq)}";
    }

    /// <summary>How much is said below the readings: what was typed comes first, however much is said of it.</summary>
    private static string Standing(Entry entry) =>
        $"{string.Join(", ", new[] { Level.Urgent, Level.Watch, Level.Note }.Select(l => (Level: l, Count: entry.Findings.Count(f => f.Level == l))).Where(l => l.Count > 0).Select(l => FormattableString.Invariant($"{l.Count} {LevelWords.Of(l.Level)}")))}; in full below what was read: End";

    private static IEnumerable<Line> OfEntry(Session session, JournalRecord record, Entry entry, IReadOnlyList<JournalRecord> corrections) =>
    [
        .. Field(session, "round", entry.Round is { } round ? session.Site.FindRound(round)?.Title ?? round : null),
        .. Field(session, "walked", entry.WalkStart is { } start ? $"{Say.Time(session.Site, start, record.At)} to {(entry.WalkEnd is { } end ? Say.Time(session.Site, end, record.At) : "not said")}" : null),
        .. Field(session, "second of", entry.SecondOf is { } first ? Say.Ref(first) : null),
        .. Field(session, "imported", entry.Imported),
        .. Field(session, "remark", entry.Remark),
        .. Field(session, "stands out", entry.Findings.Count > 0 ? Standing(entry) : corrections.Count > 0 ? "nothing any more, as put right" : null),
        .. entry.Readings.SelectMany(r => OfReading(session, record, r, [.. corrections.Where(c => ((Correction)c.Body).Readings.Any(b => b.Point == r.Point))])),
        .. OfResults(session, entry.Results),
        Line.Empty,
        .. entry.Findings.OrderByDescending(f => f.Level).SelectMany(f => FindingLines.Of(session, f)),
    ];

    private static IEnumerable<Line> OfReading(Session session, JournalRecord record, Reading reading, IReadOnlyList<JournalRecord> corrections)
    {
        var name = session.Site.FindPoint(reading.Point)?.Description ?? "not a point any more";
        string[] parts =
        [
            $"{name}: {Say.Reading(session.Site, reading)}, read {Say.Time(session.Site, reading.At, record.At)}",
            reading.Typed is { } typed ? $"typed '{typed}'" : "",
            .. corrections.Select(c => $"put right {Say.Ref(c.Seq)} to {Say.Reading(session.Site, ((Correction)c.Body).Readings.First(r => r.Point == reading.Point))}"),
            reading.Retyped is { } first ? $"first typed '{first}'" : "",
            reading.Second is { } second ? $"second reading '{second}'" : "",
            reading is { NotTaken: false, Why: { } why } ? $"kept because: {why}" : "",
            reading.Remark ?? "",
        ];
        return Gutter.Lines(reading.Point, Look.Strong, string.Join("; ", parts.Where(p => p.Length > 0)), session.Width);
    }

    private static IEnumerable<Line> OfResults(Session session, IReadOnlyList<Result> results) => results.SelectMany(r =>
    {
        var point = r.Point is { } tag ? session.Site.FindPoint(tag) : null;
        var value = point is null ? $"{r.Value.ToString("G6", CultureInfo.InvariantCulture)} {r.Unit}" : Say.Value(point, r.Value, r.Unit);
        var u = r.U is { } known ? $", standard uncertainty {Figures.Two(known)}{(r.Covers is null ? "" : $" ({r.Covers})")}" : "";
        return Gutter.Lines("= " + (r.Point ?? r.Output), Look.Strong, $"{point?.Description ?? r.Output}: {value}{u}; {r.Name}, {r.By}", session.Width);
    });

    private static IEnumerable<Line> OfSection(Session session, NoteSection section) =>
        section.Lines.SelectMany(l => Gutter.Lines(l.Label, Look.Strong, l.Text, session.Width)).Prepend(Line.Of(new Span($" {section.Title}", Look.Strong), new Span($"  {section.Beside}", Look.Faint)));

    private static IEnumerable<Line> Field(Session session, string word, string? text) =>
        string.IsNullOrEmpty(text) ? [] : Gutter.Lines(word, Look.Strong, text, session.Width);
}
