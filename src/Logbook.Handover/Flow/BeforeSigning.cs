using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>What stands before a signature: its words, and for the receiver what the other side wrote and answered.</summary>
public static class BeforeSigning
{
    /// <summary>
    /// For the receiver, once the own lines are given: what cannot both be true, which of the own answers did not agree with the
    /// page, what the giver has not checked, what was asked and answered, the giver's if-thens and own words. They show only now,
    /// so that the receiver's lines are the receiver's own.
    /// </summary>
    public static IReadOnlyList<NoteLine> Receiver(Desk desk, string by) =>
    [
        .. Contradicted(desk.Site, desk.State.Equipment, desk.State.Carried, desk.Now),
        .. desk.State.Line.Missed.Where(m => Handed.Same(m.By, by)).Select(m => new NoteLine("read again", $"answered otherwise than the page at first: {Say.Visible(m.Text)}")),
        .. Told(desk, by),
    ];

    /// <summary>What the log says twice and that cannot both be true: no signature stands below it unread.</summary>
    public static IReadOnlyList<NoteLine> Contradicted(Site site, IReadOnlyDictionary<string, EquipmentStatus> equipment, IReadOnlyList<CarriedItem> carried, DateTimeOffset now) =>
        [.. YetRecorded.All(site, equipment, carried, now).Select(words => new NoteLine("not both", words))];

    private static IReadOnlyList<NoteLine> Told(Desk desk, string by)
    {
        if (desk.State.Line.Prepared is not { } prepared || desk.Store.Read(prepared.Seq).First() is not { Body: HandoverPrepared body } record)
        {
            return Answers(desk, by, desk.State.Line.Holder?.Seq ?? 0);
        }

        var giver = Say.Person(desk.Site, record.By);
        return
        [
            .. Lines(giver, body),
            .. Answers(desk, by, prepared.Seq),
        ];
    }

    /// <summary>The if-thens and own words of who gave the line, once it is taken: what was said above the PIN was read by who was about to sign.</summary>
    public static IReadOnlyList<NoteLine> OfGiver(Desk desk, HandoverAccepted accepted) =>
        accepted.Prepared is { } seq && desk.Store.Read(seq).First() is { Body: HandoverPrepared body } record ? [.. OwnLines(Say.Person(desk.Site, record.By), body)] : [];

    /// <summary>All that the giver said to who holds the line by such an acceptance, and when; empty when nobody does, or it was taken otherwise.</summary>
    public static IReadOnlyList<NoteLine> ToHolder(Desk desk) =>
        desk.State.Line.Holder is { } holder && desk.Store.Read(holder.Seq).First() is { Body: HandoverAccepted { Prepared: { } seq } } && desk.Store.Read(seq).First() is { Body: HandoverPrepared body } record
            ? [.. Lines($"{Say.Person(desk.Site, record.By)} {Say.Time(desk.Site, record.At, desk.Now)}", body)] : [];

    private static IEnumerable<NoteLine> Lines(string giver, HandoverPrepared body) =>
        [.. NotAsBefore(body).Select(words => new NoteLine("declared", $"{giver}: {words}")), .. OwnLines(giver, body)];

    /// <summary>What was declared as not checked or as changed, with the words.</summary>
    internal static IEnumerable<string> NotAsBefore(HandoverPrepared body) => Declared(body.Declared, body.Changes, "not-checked", "change");

    private static IEnumerable<NoteLine> OwnLines(string giver, HandoverPrepared body) =>
    [
        .. body.IfThen.Select(text => new NoteLine("if, then", $"{giver}: {Say.Visible(text)}")),
        .. body.Words.Select(text => new NoteLine("own words", $"{giver}: {Say.Visible(text)}")),
    ];

    /// <summary>For the giver: each hazard section as it will stand under the signature, what was not checked first.</summary>
    public static IReadOnlyList<NoteLine> Giver(IReadOnlyDictionary<string, string> declared) =>
        [.. Declared(HazardSections.Of(declared), HazardSections.Changes(declared)).Select(words => new NoteLine("declared", words))];

    internal static IEnumerable<string> Declared(IReadOnlyDictionary<string, string> sections, IReadOnlyDictionary<string, string>? changes) => Declared(sections, changes, "not-checked", "change", "checked");

    private static IEnumerable<string> Declared(IReadOnlyDictionary<string, string> sections, IReadOnlyDictionary<string, string>? changes, params string[] values) =>
        from value in values
        let names = HazardSections.All.Where(name => sections.GetValueOrDefault(name) == value).ToList()
        where names.Count > 0
        select $"{(value switch { "not-checked" => "NOT CHECKED", "change" => "CHANGED", _ => "checked" })}: {string.Join(value == "change" ? "; " : ", ", names.Select(name => name + (value == "change" && changes?.GetValueOrDefault(name) is { } words ? $", {Say.Visible(words)}" : "")))}";

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
