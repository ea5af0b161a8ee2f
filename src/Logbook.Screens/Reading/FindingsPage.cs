using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>Findings in full, each with its evidence.</summary>
/// <param name="Seq">The record that they stand in; null while it is not saved.</param>
internal sealed record FindingsPage(string Title, IReadOnlyList<Finding> Findings, long? Seq, int Scroll) : Page, IScrolled
{
    /// <summary><c>SEQ.N</c> of the finding that leads the page and of those as urgent that follow from it: what was done about them can be written down. Empty when the page has no one lead.</summary>
    public IReadOnlyList<string> Answers { get; init; } = [];

    /// <summary>What follows from a reading stands under it in one line, until it is asked for.</summary>
    public bool Folds { get; init; }

    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "its record", "Opens the record that this stands in.", (session, _, _) => Next.Of(session, new ReadRecord(Of(session).Seq!.Value)), KeyName.Enter)
            with { WhyNot = s => Of(s).Seq is null ? "it is not in the journal yet" : null },
        Scrolling.Keys,
        KeyRow.Letter('w', "what follows", "Shows in full what follows from a reading too.", (session, _) => Next.Of(session.Put(Of(session) with { Folds = false })))
            with { WhyNot = s => Of(s).Folds && Folding.Of(s.Site, Of(s).Findings).Any(f => f.Following.Count > 0) ? null : "everything is shown already" },
        SecondReading.Key(session => (Of(session).Seq, Of(session).Findings)),
        KeyRow.Letter('y', "answer", "Writes down what was done about it, the cause, and who was told.", (session, _) => Next.Of(session.Open(Answer(Of(session).Answers))))
            with { WhyNot = s => Of(s).Answers.Count == 0 ? "it is one of several, or not in the journal yet" : RecordAsks.NobodyTypes(s) },
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public static FindingsPage Of(Session session, Folded<OpenFinding> found)
    {
        var open = found.Lead;
        var point = open.Finding.Point is { } tag ? $"{tag} {session.Site.FindPoint(tag)?.Description}, " : "";
        return new FindingsPage($"{point}{Say.Time(session.Site, open.At, session.Clock)}", [open.Finding, .. found.Following.Select(f => f.Finding)], open.Seq, 0)
        {
            Answers = [.. found.Following.Where(f => f.Finding.Level == Level.Urgent).Prepend(open).Select(f => FormattableString.Invariant($"{f.Seq}.{f.Number}"))],
        };
    }

    /// <summary>The pages with what now stands of an entry that was put right: what was found before must not be read as if it did.</summary>
    public static Session Corrected(Session session, long entry, JournalRecord record) => session with
    {
        Pages = session.Pages.ConvertAll(page => page is FindingsPage shown && shown.Seq == entry
            ? shown with
            {
                Title = $"What stands of the entry {Say.Ref(entry)}, put right {Say.Ref(record.Seq)}", Findings = ((Correction)record.Body).Findings, Scroll = 0,
                Answers = ((Correction)record.Body).Findings.Count == 1 ? [FormattableString.Invariant($"{record.Seq}.1")] : [],
            }
            : page),
    };

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([Line.Of($" {Title}", Look.Strong), Line.Empty], Lines(session), Scroll, Scroll, []) { Top = Scroll };

    private List<Line> Lines(Session session) => [.. Shown(session), .. Findings.Count == 0 ? [Line.Of(" nothing stands out any more", Look.Strong), Line.Empty] : Array.Empty<Line>(), .. Seq is { } seq ? [Line.Of($" in record {Say.Ref(seq)}", Look.Faint)] : Array.Empty<Line>()];

    private IEnumerable<Line> Shown(Session session) => !Folds
        ? Findings.SelectMany(f => FindingLines.Of(session, f))
        : Folding.Of(session.Site, Findings).SelectMany(f => FindingLines.Of(session, f.Lead, f.Following.Count == 0 ? "" : Folding.Words(session.Site, f.Following)));

    private static AskPage Answer(IReadOnlyList<string> findings) => new(
        "What was done, what was the cause, who was told?",
        findings.Count == 1 ? "written beside the finding" : $"written beside the finding and {Say.Count(findings.Count - 1, "urgent one")} that {(findings.Count == 2 ? "follows" : "follow")} from it", "",
        (asking, text, _) => Next.Of(asking, [.. findings.Select(finding => new WriteIt(new AnswerFinding(asking.By!, finding, text)))]));

    private static FindingsPage Of(Session session) => (FindingsPage)session.Top;
}

/// <summary>One finding with its evidence, in lines.</summary>
internal static class FindingLines
{
    /// <param name="follows">What follows from it, in one line; empty when nothing does.</param>
    public static IEnumerable<Line> Of(Session session, Finding finding, string follows = "") =>
    [
        .. Gutter.Lines(finding.Code == "refused" ? "refused" : LevelWords.Of(finding.Level), LevelWords.LookOf(finding.Level), FindingWords.Of(session.Site, finding), session.Width),
        .. finding.Evidence.SelectMany((e, i) => Gutter.Lines(i == 0 ? "evidence" : "", Look.Faint, e, session.Width)),
        .. follows.Length == 0 ? [] : Gutter.Lines("", Look.Plain, follows, session.Width),
        Line.Empty,
    ];
}
