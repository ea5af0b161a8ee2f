using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Who may look at what the audit says of one person's walks: the person, by PIN; then, answered and told, the readers that the policy names.</summary>
public static class OwnLooks
{
    private const string Answered = "own-answered";
    private const string Looked = "own-looked";

    // An answer to what stood there long ago is none to what stands there now. Judgement.
    private static readonly TimeSpan AnswerHolds = TimeSpan.FromDays(14);

    /// <summary>Shows it to the person, or to a reader; a reader's look is a record that the person sees.</summary>
    /// <param name="of">Whose walks.</param>
    /// <param name="why">Why a reader looks; the person needs no reason.</param>
    public static Handed Look(Desk desk, SignWith sign, string by, string of, string? why)
    {
        if (Handed.Same(by, of))
        {
            var refused = Refused(desk, by) ?? WhyNot(desk) ?? Signing.Check(desk, sign, by);
            return refused is null ? Shown(desk, of, null) : Handed.Not(refused);
        }

        var handed = Handed.Step(
            desk, by,
            () => [.. Given.Person(desk.Site, of), .. Given.Text(why ?? "", "why you look")],
            () => WhyNot(desk) ?? NoReader(desk, by, of),
            () => Signing.Check(desk, sign, by) is { } wrong ? (null, wrong) : (new PersonChanged(desk.Site.FindPerson(of)!.Code, Looked, null, why!.Trim()), null));
        return handed.Record is { } record ? Shown(desk, of, record) : handed;
    }

    /// <summary>The person answers, whether anything is shown or not.</summary>
    public static Handed Answer(Desk desk, SignWith sign, string by, string text) => Handed.Step(
        desk, by,
        () => Given.Text(text, "your answer"),
        () => WhyNot(desk),
        () => Signing.Check(desk, sign, by) is { } wrong ? (null, wrong) : (new PersonChanged(desk.Site.FindPerson(by)!.Code, Answered, null, text.Trim()), null));

    /// <summary>What was answered, and who has looked, in words.</summary>
    internal static IEnumerable<NoteLine> Lines(Desk desk, string code)
    {
        var told = Records(desk, code);
        var answer = told.LastOrDefault(r => Is(r, Answered));
        yield return new NoteLine("answer", answer is null ? "none yet; nobody else sees this page before" : $"{Say.Day(desk.Site, answer.At)}: {Say.Visible(((PersonChanged)answer.Body).Why ?? "")} {Say.Ref(answer.Seq)}");
        foreach (var look in told.Where(r => Is(r, Looked)))
        {
            yield return new NoteLine("looked", $"{Say.Person(desk.Site, look.By)} {Say.Day(desk.Site, look.At)}: {Say.Visible(((PersonChanged)look.Body).Why ?? "")} {Say.Ref(look.Seq)}");
        }
    }

    private static Handed Shown(Desk desk, string of, JournalRecord? record) => new(record, [], null) { Own = OwnAudit.Of(desk, of) };

    private static string? Refused(Desk desk, string by)
    {
        desk.Follow();
        return desk.WhyNot(by).Select(m => m.ToString()).FirstOrDefault();
    }

    /// <summary>Why nobody sees anything of anybody; null when it may be shown.</summary>
    public static string? WhyNot(Desk desk) => OwnAudit.WhyOff(desk);

    private static string? NoReader(Desk desk, string by, string of) =>
        !desk.Site.Policy!.Readers.Any(r => Handed.Same(r, by)) ? $"the policy lets {string.Join(", ", desk.Site.Policy.Readers.Select(r => Say.Person(desk.Site, r)))} look, and everybody at the own page"
        : Records(desk, of).Any(r => Is(r, Answered) && desk.Now - r.At <= AnswerHolds) ? null
        : $"{Say.Person(desk.Site, of)} has not looked and answered in the last {AnswerHolds.Days} days; nobody sees it before";

    private static List<JournalRecord> Records(Desk desk, string code) =>
        [.. desk.Store.Between(desk.Now.AddDays(-56), desk.Now.AddMinutes(1)).Where(r => r.Body is PersonChanged change && Handed.Same(change.Code, code) && (Is(r, Answered) || Is(r, Looked)))];

    private static bool Is(JournalRecord record, string change) => record.Body is PersonChanged person && person.Change == change;
}
