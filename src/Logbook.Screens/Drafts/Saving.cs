using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>From the draft to the journal: when, and what is said of it.</summary>
internal static class Saving
{
    private static readonly TimeSpan IdleBefore = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan TryAgainAfter = TimeSpan.FromMinutes(1);

    public static SaveEntry All(Draft draft) => new(draft.Request(draft.Lines));

    /// <summary>What is typed does not lie about for ever: it is saved after ten idle minutes, and a failed save is tried again.</summary>
    public static Next Tick(Session session)
    {
        if (session.Draft is not { } draft)
        {
            return Next.Of(session, new Follow());
        }

        var due = session.SaveFailedAt is { } failed ? session.Clock - failed >= TryAgainAfter : session.Clock - session.LastKey >= IdleBefore;
        return due ? Next.Of(session with { SaveFailedAt = session.Clock }, new Follow(), All(draft)) : Next.Of(session, new Follow());
    }

    public static Next Saved(Session session, JournalRecord record)
    {
        var rest = session.Draft?.Without(record);
        var words = Beside(session, record) ?? Words(session, record);
        session = session with
        {
            Draft = rest,
            SaveFailedAt = null,
            Pages = session.Pages.ConvertAll(page => page is RoundPage round ? Marked(round, record) : page),
        };
        session = session.Top is RoundPage ? session : Spoken(session, record);
        return Next.Of(session.Say(words), rest is null ? [new DropDraft()] : []);
    }

    /// <summary>What the whole entry has to say when the round is left: the worst first, of the same level what no single row could say.</summary>
    private static Session Spoken(Session session, JournalRecord record)
    {
        IReadOnlyList<Finding> findings = record.Body is Entry entry
            ? [.. SaidAtOnce.Of(new Links(session.Site), entry.Findings).Where(f => f.Level > Level.Note || f.Point is null).OrderByDescending(f => f.Level).ThenByDescending(f => f.Point is null)]
            : [];
        return findings.Count == 0 ? session : session.Open(new FindingsPage($"What stands out in the entry {Say.Ref(record.Seq)}{InTheWalkBefore(session, record)}", findings, record.Seq, 0) { Folds = true });
    }

    // What is urgent is saved at once, and what was typed with it: of one walk there may be several entries. Judgement, no source.
    private static readonly TimeSpan Walk = TimeSpan.FromMinutes(30);

    /// <summary>What stands of entries saved shortly before: the page must not read as if the walk had found no more.</summary>
    private static string InTheWalkBefore(Session session, JournalRecord record)
    {
        List<OpenFinding> before = [.. session.Facts.Now.StandsOut.Where(f => f.Finding.Level > Level.Note && f.Seq < record.Seq && record.At - f.At < Walk)];
        return before.Count == 0 ? "" : $"; saved before it: {string.Join(", ", before.Select(f => $"{f.Finding.Level.ToString().ToLowerInvariant()} {f.Finding.Point}"))} {Say.Ref(before.Select(f => f.Seq))}";
    }

    public static Session NotSaved(Session session, string why) =>
        (session with { SaveFailedAt = session.Clock }).Say($"NOT SAVED, kept in the draft: {why}", Look.Urgent);

    /// <summary>The unsaved in words; null when there is nothing.</summary>
    public static string? Unsaved(Session session) => session.Draft is { } draft ? Unsaved(session, draft) : null;

    /// <summary>The own draft, and those that were left behind and are not taken up.</summary>
    public static IReadOnlyList<string> AllUnsaved(Session session) =>
        [.. new[] { session.Draft }.OfType<Draft>().Concat(session.Left.Select(l => l.Draft)).Select(d => Unsaved(session, d))];

    public static string Unsaved(Session session, Draft draft) =>
        $"{InsteadOfTrips.Title(session.Site, draft.Round)}: {(draft.Readings > 0 ? Say.Count(draft.Readings, "reading") : Say.Count(draft.Lines.Count, "remark"))} of {Say.Person(session.Site, draft.By)}, "
        + $"{Say.Time(session.Site, draft.From, session.Clock)} to {Say.Time(session.Site, draft.To, session.Clock)}";

    private static RoundPage Marked(RoundPage page, JournalRecord record) => page with
    {
        Rows = page.Rows.ConvertAll(row => In(page, row, record) is { } reading ? row with { Line = null, Saved = new SavedReading(record.Seq, reading.Typed ?? "-", reading.Why, reading.At) } : row),
    };

    /// <summary>What the record has of the line that was typed in a row; null when it is of other lines.</summary>
    private static Reading? In(RoundPage page, RoundRow row, JournalRecord record) =>
        record.Body is Entry entry && entry.Round == Draft.InEntry(page.Round.Id) && row.Line is { Text: not null } line
            ? entry.Readings.FirstOrDefault(r => r.Point == row.Point.Tag && r.At == line.At) : null;

    /// <summary>Where a row of the round was typed again after it was saved: the first one stays. Null when none was.</summary>
    private static string? Beside(Session session, JournalRecord record) =>
        session.Pages.OfType<RoundPage>().SelectMany(page => page.Rows.Where(row => row.Saved is not null && In(page, row, record) is not null)).FirstOrDefault() is { } again
            ? $"saved {Say.Ref(record.Seq)}; {again.FirstStays}" : null;

    private static string Words(Session session, JournalRecord record)
    {
        if (record.Body is not Entry entry)
        {
            return $"saved {Say.Ref(record.Seq)}";
        }

        var notTaken = entry.Readings.Count(r => r.NotTaken);
        string[] parts =
        [
            Say.Count(entry.Readings.Count - notTaken, "reading"),
            notTaken > 0 ? $"{notTaken} not taken" : "",
            LevelWords.Count(SaidAtOnce.Of(new Links(session.Site), entry.Findings).Select(f => f.Level)),
        ];
        return $"saved {Say.Ref(record.Seq)} {(session.Site.FindRound(entry.Round ?? "") is { } round ? round.Title + ": " : "")}{string.Join(", ", parts.Where(p => p.Length > 0))}";
    }
}
