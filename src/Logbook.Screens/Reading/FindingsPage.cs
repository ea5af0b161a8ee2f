using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>Findings in full, each with its evidence.</summary>
/// <param name="Seq">The record that they stand in; null while it is not saved.</param>
internal sealed record FindingsPage(string Title, IReadOnlyList<Finding> Findings, long? Seq, int Scroll) : Page, IScrolled
{
    /// <summary><c>SEQ.N</c> of a finding that stands alone: what was done about it can be written down.</summary>
    public string? Answers { get; init; }

    private static readonly KeyTable Table = new(
        KeyRow.Named("Enter", "its record", "Opens the record that this stands in.", (session, _, _) => Next.Of(session, new ReadRecord(Of(session).Seq!.Value)), KeyName.Enter)
            with { WhyNot = s => Of(s).Seq is null ? "it is not in the journal yet" : null },
        Scrolling.Keys,
        SecondReading.Key(session => (Of(session).Seq, Of(session).Findings)),
        KeyRow.Letter('y', "answer", "Writes down what was done about it, the cause, and who was told.", (session, _) => Next.Of(session.Open(Answer(Of(session).Answers!))))
            with { WhyNot = s => Of(s).Answers is null ? "it is one of several, or not in the journal yet" : RecordAsks.NobodyTypes(s) },
        UsualKeys.Back(),
        UsualKeys.Find,
        UsualKeys.Help);

    public override KeyTable Keys => Table;

    public static FindingsPage Of(Session session, OpenFinding open)
    {
        var point = open.Finding.Point is { } tag ? $"{tag} {session.Site.FindPoint(tag)?.Description}, " : "";
        return new FindingsPage($"{point}{Say.Time(session.Site, open.At, session.Clock)}", [open.Finding], open.Seq, 0) { Answers = FormattableString.Invariant($"{open.Seq}.{open.Number}") };
    }

    /// <summary>The pages with what now stands of an entry that was put right: what was found before must not be read as if it did.</summary>
    public static Session Corrected(Session session, long entry, JournalRecord record) => session with
    {
        Pages = session.Pages.ConvertAll(page => page is FindingsPage shown && shown.Seq == entry
            ? shown with
            {
                Title = $"What stands of the entry {Say.Ref(entry)}, put right {Say.Ref(record.Seq)}", Findings = ((Correction)record.Body).Findings, Scroll = 0,
                Answers = ((Correction)record.Body).Findings.Count == 1 ? FormattableString.Invariant($"{record.Seq}.1") : null,
            }
            : page),
    };

    public Page ScrolledTo(int line) => this with { Scroll = line };

    public override Layout Draw(Session session) => new([Line.Of($" {Title}", Look.Strong), Line.Empty], Lines(session), Scroll, Scroll, []) { Top = Scroll };

    private List<Line> Lines(Session session) => [.. Findings.SelectMany(f => FindingLines.Of(session, f)), .. Findings.Count == 0 ? [Line.Of(" nothing stands out any more", Look.Strong), Line.Empty] : Array.Empty<Line>(), .. Seq is { } seq ? [Line.Of($" in record {Say.Ref(seq)}", Look.Faint)] : Array.Empty<Line>()];

    private static AskPage Answer(string finding) => new(
        "What was done, what was the cause, who was told?", "written beside the finding", "", (asking, text, _) => Next.Of(asking, new WriteIt(new AnswerFinding(asking.By!, finding, text))));

    private static FindingsPage Of(Session session) => (FindingsPage)session.Top;
}

/// <summary>One finding with its evidence, in lines.</summary>
internal static class FindingLines
{
    public static IEnumerable<Line> Of(Session session, Finding finding) =>
    [
        .. Gutter.Lines(finding.Code == "refused" ? "refused" : LevelWords.Of(finding.Level), LevelWords.LookOf(finding.Level), FindingWords.Of(session.Site, finding), session.Width),
        .. finding.Evidence.SelectMany((e, i) => Gutter.Lines(i == 0 ? "evidence" : "", Look.Faint, e, session.Width)),
        Line.Empty,
    ];
}
