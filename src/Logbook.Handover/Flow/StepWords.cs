using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>The steps of the handover and the changes of people in words, as the log shows them.</summary>
internal static class StepWords
{
    public static string Of(Site site, JournalRecord record) => record.Body switch
    {
        HandoverPrepared p => $"Handover of {p.Note.Shift} prepared{string.Concat(BeforeSigning.NotAsBefore(p).Select(words => "; " + words))}{Lines(p.IfThen)}{Lines(p.Words)}{By(site, p.Signed)}",
        HandoverSeen seen => $"Opened {(LineHeld.Pages.Contains(seen.Page, StringComparer.Ordinal) ? $"the page {seen.Page}" : $"record {Say.Visible(seen.Page)}")}",
        HandoverMissed m => $"Answered otherwise than the page of what can hurt, which is read again: {Say.Visible(m.Question)}",
        HandoverQuestion q => $"Asks: {Say.Visible(q.Text)}{(q.About is { } seq ? " " + Say.Ref(seq) : "")}",
        HandoverAnswer a => $"{Say.Person(site, a.From)} {(a.Question is null ? "answered the call" : $"answers {Say.Ref(a.Question.Value)}")}{(a.Aloud ? ", aloud" : "")}: {Say.Visible(a.Text)}",
        HandoverAccepted a => $"Takes the line over{From(site, a.From)}{(a.Unattended is null ? "" : $", UNATTENDED: {Say.Visible(a.Unattended)}")}; checks first{Lines(a.First)}"
            + $"{(a.Reservation is null ? "" : $"; reservation: {Say.Visible(a.Reservation)}")}{Missed(a)}{By(site, a.Signed)}",
        HandoverRefused r => $"REFUSES the handover: {Say.Visible(r.Why)}; the line stays where it is",
        HandoverRelief relief => Relief(site, relief),
        HandoverNotYet n => $"Not yet: {Say.Visible(n.Why)}; keeps the line",
        HandoverContinued c => $"Continues to hold the line: {Say.Visible(c.Why)}",
        HandoverCountersigned c => $"Countersigns {Say.Ref(c.Target)}: {Say.Visible(c.Why)}{By(site, c.Signed)}",
        PersonChanged change => Person(site, change),
        _ => Say.Visible(record.Kind),
    };

    /// <summary>How it was signed: by PIN, by a witness, with what must stand beside it.</summary>
    public static string By(Site site, Signed signed) => signed.How switch
    {
        "none" => "",
        "witness" => $"; by the PIN of {Say.Person(site, signed.Witness ?? "?")} as witness, identity to be confirmed",
        _ => "; by PIN",
    } + (signed.Reset is { } seq ? $", PIN reset before {Say.Ref(seq)}" : "");

    private static string Relief(Site site, HandoverRelief relief) => relief.Mode switch
    {
        "emergency" => $"EMERGENCY RELIEF, takes the line{From(site, relief.From)}: {Say.Visible(relief.Words)}",
        "left" => $"LEFT THE LINE UNATTENDED: {Say.Visible(relief.Words)}",
        _ => $"Short relief{From(site, relief.From)}: {Say.Visible(relief.Words)}{By(site, relief.Signed)}",
    };

    private static string Person(Site site, PersonChanged change)
    {
        var name = Say.Person(site, change.Code);
        return change.Change switch
        {
            "pin-set" => $"PIN of {name} set",
            "pin-reset" => $"PIN of {name} RESET{(change.Why is { } why ? $", {Say.Visible(why)}" : "")}; stands beside the next signature",
            "closed" => $"{name} closed: {Say.Visible(change.Why ?? "")}",
            "own-answered" => $"{name} has looked at what the audit says of the own walks, and says: {Say.Visible(change.Why ?? "")}",
            "own-looked" => $"What the audit says of walks by {name} was looked at: {Say.Visible(change.Why ?? "")}",
            "confirmed" => $"{name} confirms the witnessed signature {Say.Ref(change.Target ?? 0)}",
            _ => $"{name}: {Say.Visible(change.Change)}",
        };
    }

    private static string From(Site site, string? from) => from is null ? ", nobody held it" : $" from {Say.Person(site, from)}";

    /// <summary>How often a question was answered otherwise than the page before it was answered rightly; empty when never.</summary>
    public static string Missed(HandoverAccepted accepted) => accepted.Missed is not { Count: > 0 } missed ? ""
        : $"; {Say.Count(missed.Count, "answer")} at first otherwise than the page, which was read again";

    private static string Lines(IReadOnlyList<string> lines) => string.Concat(lines.Select(l => "; " + Say.Visible(l)));
}
