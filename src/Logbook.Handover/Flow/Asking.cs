using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Questions about the handover and their answers, before it and after it.</summary>
public static class Asking
{
    public static Handed Ask(Desk desk, string by, string text, long? about) => Handed.Step(
        desk, by,
        () => [.. Given.Text(text, "the question"), .. about is null || (about >= 1 && about <= desk.State.Head.Seq) ? Array.Empty<Mistake>() : [Mistake.Typed($"there is no record {about}", $"1 to {desk.State.Head.Seq}")]],
        () => null,
        () => new HandoverQuestion(text.Trim(), about));

    /// <param name="from">Who answered, when another writes it down: then it was said aloud.</param>
    public static Handed Reply(Desk desk, string by, long question, string text, string? from) => Handed.Step(
        desk, by,
        () =>
        [
            .. Given.Text(text, "the answer"), .. from is null ? [] : Given.Person(desk.Site, from),
            .. desk.State.Line.Questions.Exists(q => q.Seq == question) ? Array.Empty<Mistake>() : [Mistake.Typed($"no question {question} is open", Open(desk))],
        ],
        () => null,
        () => new HandoverAnswer(question, text.Trim(), Code(desk, from ?? by), from is not null && !Handed.Same(from, by)));

    /// <summary>Who answered the call while nobody held the line.</summary>
    public static Handed Called(Desk desk, string by, string from, string text) => Handed.Step(
        desk, by,
        () => [.. Given.Text(text, "what was said"), .. Given.Person(desk.Site, from)],
        () => desk.State.Line.Holder is { } holder ? $"{Say.Person(desk.Site, holder.Code)} holds the line: there is no call to answer" : null,
        () => new HandoverAnswer(null, text.Trim(), Code(desk, from), !Handed.Same(from, by)));

    private static string Code(Desk desk, string code) => desk.Site.FindPerson(code)!.Code;

    private static string Open(Desk desk) => desk.State.Line.Questions.IsEmpty
        ? "none is open"
        : "open: " + string.Join(", ", desk.State.Line.Questions.Select(q => q.Seq));
}
