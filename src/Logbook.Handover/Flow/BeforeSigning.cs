using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover;

/// <summary>What stands before a signature: its words, and for the receiver what the other side wrote and answered.</summary>
public static class BeforeSigning
{
    /// <summary>
    /// For the receiver, once the own lines are given: what was asked and answered, the giver's if-thens and own words. They
    /// show only now, so that the receiver's lines are the receiver's own.
    /// </summary>
    public static IReadOnlyList<NoteLine> Receiver(Desk desk, string by)
    {
        if (desk.State.Line.Prepared is not { } prepared || desk.Store.Read(prepared.Seq).First() is not { Body: HandoverPrepared body } record)
        {
            return Answers(desk, by, desk.State.Line.Holder?.Seq ?? 0);
        }

        var giver = Say.Person(desk.Site, record.By);
        return
        [
            .. body.IfThen.Select(text => new NoteLine("if, then", $"{giver}: {Say.Visible(text)}")),
            .. body.Words.Select(text => new NoteLine("own words", $"{giver}: {Say.Visible(text)}")),
            .. Answers(desk, by, prepared.Seq),
        ];
    }

    /// <summary>For the giver: each hazard section as it will stand under the signature, what was not checked first.</summary>
    public static IReadOnlyList<NoteLine> Giver(IReadOnlyDictionary<string, string> declared) =>
        [.. Declared(HazardSections.Of(declared)).Select(words => new NoteLine("declared", words))];

    internal static IEnumerable<string> Declared(IReadOnlyDictionary<string, string> sections) =>
        from value in new[] { "not-checked", "change", "checked" }
        let names = HazardSections.All.Where(name => sections.GetValueOrDefault(name) == value).ToList()
        where names.Count > 0
        select $"{(value switch { "not-checked" => "NOT CHECKED", "change" => "CHANGED", _ => "checked" })}: {string.Join(", ", names)}";

    /// <summary>What this person asked since then, each with its answer or that there is none.</summary>
    private static List<NoteLine> Answers(Desk desk, string by, long since)
    {
        var records = desk.Store.Read(since + 1).ToList();
        return [.. records.Where(r => r.Body is HandoverQuestion && Handed.Same(r.By, by)).Select(asked => Answer(desk, asked, records.Find(r => r.Body is HandoverAnswer a && a.Question == asked.Seq)))];
    }

    private static NoteLine Answer(Desk desk, JournalRecord asked, JournalRecord? answer)
    {
        var said = answer?.Body is HandoverAnswer a ? $"{Say.Person(desk.Site, a.From)}{(a.Aloud ? ", aloud" : "")}: {Say.Sentence(a.Text)}" : "NO ANSWER YET.";
        return new NoteLine("you asked", $"{Say.Visible(((HandoverQuestion)asked.Body).Text)} {said} {Say.Ref(asked.Seq)}");
    }
}
