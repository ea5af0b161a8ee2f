using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What the receiver gives.</summary>
/// <param name="First">One to three lines, "I check first ...", in own words.</param>
/// <param name="Answers">To the questions of <see cref="HazardQuestions"/>, each the number of a choice.</param>
public sealed record AcceptRequest(string By, IReadOnlyList<string> First, IReadOnlyList<int> Answers)
{
    public string? Reservation { get; init; }

    /// <summary>Why nobody hands over; null when somebody does.</summary>
    public string? Unattended { get; init; }
}

/// <summary>The receiver takes the line over in full: responsibility moves here and nowhere else.</summary>
public static class Accepting
{
    private const int MostLines = 3;

    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Handed Accept(Desk desk, SignWith sign, AcceptRequest request)
    {
        IReadOnlyList<HazardQuestion> questions = [];
        IReadOnlyList<HazardQuestion> wrong = [];
        var handed = Handed.Step(
            desk, request.By,
            () => Typed(request),
            () => WhyNot(desk, request) ?? NotAnswered(questions = HazardQuestions.For(desk, request.By), request.Answers, out wrong),
            () => Sign(desk, sign, request, questions));
        return wrong.Count > 0 ? Reopen(desk, request.By, wrong, handed)
            : handed.Record is { } record && desk.State.Line.Holder?.Seq != record.Seq ? Handed.Not(Overtaken(desk))
            : handed;
    }

    /// <summary>What the rules say against it before anything is typed; null when nothing does.</summary>
    public static string? WhyNot(Desk desk, string by, bool unattended)
    {
        var (line, site) = (desk.State.Line, desk.Site);
        string Name(string code) => Say.Person(site, code);
        return line.Holder is { } holder && Handed.Same(holder.Code, by)
            ? $"{Name(by)} holds the line already: the same person does not take over from itself; to go on: handover continue"
            : line.NotYet is { } held && !unattended ? $"not yet: {Say.Visible(held.Why)}; {Name(line.Holder!.Code)} prepares anew when it is over"
            : line.Prepared is null && !unattended ? NothingPrepared(line, site)
            : HandoverPages.Missing(desk, by) is { Count: > 0 } missing ? NotSeen(missing)
            : null;
    }

    /// <summary>Pages first, which hold the records too; a record alone names its page.</summary>
    private static string NotSeen(IReadOnlyList<string> missing) => missing.Where(LineHeld.Pages.Contains).ToList() is { Count: > 0 } pages
        ? $"not seen yet: {string.Join(", ", missing.Select(m => pages.Contains(m, StringComparer.Ordinal) ? m : $"record {m} on hazards"))}; each is opened first: handover open PAGE"
        : $"not seen yet: {(missing.Count == 1 ? "record" : "records")} {string.Join(", ", missing)}, on the page hazards: handover open hazards";

    private static string NothingPrepared(LineHeld line, Site site) => line.Holder is { } holder
        ? $"{Say.Person(site, holder.Code)} has prepared nothing; with nobody there: --unattended REASON"
        : "NOBODY HOLDS THE LINE and nothing is prepared; to take it over alone: --unattended REASON";

    private static IEnumerable<Mistake> Typed(AcceptRequest request) =>
    [
        .. request.First.Count is 0 or > MostLines ? [Mistake.Typed($"{request.First.Count} lines of what you check first", "one to three, in your own words; \"nothing beyond the list\" is one")] : Array.Empty<Mistake>(),
        .. request.First.SelectMany(text => Given.Text(text, "a line of what you check first")),
        .. request.Answers.Where(a => a is < 1 or > 3).Select(a => Mistake.Typed($"{a} is no choice", "1, 2 or 3")),
        .. request.Reservation is null ? [] : Given.Text(request.Reservation, "the reservation"),
        .. request.Unattended is null ? [] : Given.Text(request.Unattended, "the reason why nobody hands over"),
    ];

    private static string? WhyNot(Desk desk, AcceptRequest request) =>
        WhyNot(desk, request.By, request.Unattended is not null)
        ?? (desk.State.Line.Prepared is { } prepared && request.First.FirstOrDefault(f => prepared.Lines.Any(l => Bare(l) == Bare(f))) is { } copied
            ? $"\"{Say.Visible(copied.Trim())}\" is {Say.Person(desk.Site, prepared.By)}'s own line: say it in your own words"
            : null);

    private static string Bare(string line) => string.Concat(line.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static string? NotAnswered(IReadOnlyList<HazardQuestion> questions, IReadOnlyList<int> answers, out IReadOnlyList<HazardQuestion> wrong)
    {
        wrong = questions.Count == answers.Count ? [.. questions.Where((q, i) => q.Right != answers[i])] : [];
        return questions.Count != answers.Count
            ? $"{Say.Count(questions.Count, "question")} to answer and {answers.Count} answered; see: handover question"
            : wrong.Count > 0 ? "an answer does not agree with the hazards page: it is open again; read it, then: handover question"
            : null;
    }

    /// <summary>Records that a question was answered otherwise than the page, not which choice was taken: the page is unread again.</summary>
    public static Handed Miss(Desk desk, string by, HazardQuestion question) => Handed.Step(desk, by, () => [], () => null, () => new HandoverMissed(question.Text, question.Right));

    private static Handed Reopen(Desk desk, string by, IReadOnlyList<HazardQuestion> wrong, Handed refused) =>
        wrong.Select(q => Miss(desk, by, q)).FirstOrDefault(m => m.Record is null) is { } not ? not : refused with { Reopened = HandoverPages.Open(desk, by, "hazards").Page };

    private static (RecordBody? Body, string? Refused) Sign(Desk desk, SignWith sign, AcceptRequest request, IReadOnlyList<HazardQuestion> questions)
    {
        var line = desk.State.Line;
        var means = (request.Unattended is null ? Signing.Accepted : Signing.Unattended) + (request.Reservation is null ? "" : "; with reservation");
        var (signed, refused) = Signing.Sign(desk, sign, request.By, means, line.Holder?.Code);
        if (signed is null)
        {
            return (null, refused);
        }

        var note = HandoverNote.InHand(desk);
        var frozen = Freezing.Of(note with { TakeLonger = [.. note.TakeLonger, .. TakeLonger.Away(desk, request.By)] });
        return (new HandoverAccepted(
            line.Holder?.Code, line.Prepared?.Seq, [.. request.First.Select(f => f.Trim())], request.Reservation?.Trim(),
            [.. questions.Select(q => $"{q.Text} {q.Choices[q.Right - 1]}")], request.Unattended?.Trim(), frozen, Freezing.Hash(frozen), signed)
        {
            Missed = line.Missed.FindAll(m => Handed.Same(m.By, request.By)) is { Count: > 0 } missed ? [.. missed.Select(m => m.Text)] : null,
        }, null);
    }

    private static string Overtaken(Desk desk) => desk.State.Line.Holder is { } holder
        ? $"{Say.Person(desk.Site, holder.Code)} took the line in the same moment and holds it (record {holder.Seq}); yours is kept and moves nothing"
        : "the line was left in the same moment; take it over again";
}
