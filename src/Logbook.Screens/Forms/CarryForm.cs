using System.Collections.Immutable;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A carried item being opened: its kind, where, what, until when, and what its kind asks for, one question after the other. Esc leads back by one.</summary>
internal static class CarryForm
{
    // What can hurt first.
    private static readonly (string Kind, string Means)[] Kinds =
    [
        ("safety-equipment", "an eyewash, a shower, a guard that is out"), ("bypass", "a trip or an interlock that is defeated"), ("permit", "work that needs one, people inside"),
        ("isolation", "locked: do not start"), ("wash", "acid or another wash"), ("out-of-service", "equipment that is not to be used"), ("temporary-change", "a hose, a blank, a setting"),
        ("action", "something to be done"), ("transfer", "liquor on its way from tank to tank"), ("delivery", "something that comes or goes"), ("sample", "a sample on its way"),
        ("injury", "somebody was hurt"), ("release", "liquor, gas or steam got out"),
    ];

    // What a field is asked as. What its kind does not ask for may stay empty.
    private static readonly Dictionary<string, string> Questions = new(StringComparer.Ordinal)
    {
        ["number"] = "Which permit? Its number", ["entry"] = "Does it let people go inside?", ["inside"] = "How many people are inside now? 0 when nobody is; empty when nobody counted, which counts as inside", ["instead"] = "What is used or done instead?", ["allowed-by"] = "Who allowed it? A code, or the name of who did",
        ["permit"] = "To which permit does it belong? Its number; empty when there is none", ["point"] = "Which point is read by hand instead? Its tag; empty when there is none", ["every"] = "How often is it read by hand? 30m, 1h",
        ["from"] = "From which tank?", ["to"] = "Into which tank?", ["stop-level"] = "At which level is it stopped?", ["watcher"] = "Who watches it?",
        ["acid"] = "Which acid? Empty only when none is used", ["tested"] = "Rinsed and tested? By whom, and what was found; empty when it is not yet",
        ["who"] = "Who was hurt? A code or a name", ["now"] = "Where are they now? Empty when nobody knows", ["first-aid"] = "What first aid was given, since when?", ["amount"] = "How much, about?",
        ["drain"] = "Where does it drain, and what else drains there?", ["told"] = "Is the area closed, and who was told? Empty when nobody was yet", ["step"] = "At which step is it?",
    };

    // What is accepted, where the check says it in words of the command line.
    private static readonly Dictionary<string, string> Accepted = new(StringComparer.Ordinal)
    {
        ["allowed-by"] = "a code or the name of another person, who has allowed it", ["inside"] = "2, as the attendant counts",
    };

    private static readonly Dictionary<(string Field, string Word), string> Means = new()
    {
        [("entry", "yes")] = "people go in, or may", [("entry", "no")] = "nobody goes in: hot work, a line opened",
    };

    private static readonly Dictionary<string, string[]> May = new(StringComparer.Ordinal)
    {
        ["safety-equipment"] = ["instead"], ["bypass"] = ["point", "every"], ["permit"] = ["entry", "inside"], ["isolation"] = ["permit"], ["wash"] = ["acid"],
        ["injury"] = ["now", "first-aid"], ["release"] = ["amount", "to"],
    };

    // What the caution of acid asks for: answered with the caution in sight.
    private static readonly string[] OfAcid = ["tested", "drain", "told", "step"];

    public static Next Open(Session session) => Next.Of(session.Open(new PickPage(
        "What is to be carried from shift to shift?", [.. Kinds.Select(k => (k.Kind.Replace('-', ' '), k.Means))], null,
        (picking, i, _) => Next.Of(Where(picking, CarryKinds.Find(Kinds[i].Kind)!)))));

    private static Session Where(Session session, CarryKind kind) => session.Open(FinderPage.ForPlace(
        $"{Name(kind)}: at which equipment or area?", (found, on) => Next.Of(found.Open(Text(found, kind, on)))));

    private static AskPage Text(Session session, CarryKind kind, string on) => AskPage.Words($"{Name(kind)}, {Place(session, on)}: what is open?", "a few words", (asking, text) =>
        Next.Of(asking.Open(Until(asking, kind, new Carry(kind.Name, on, text, null, null, ImmutableDictionary<string, string>.Empty)))));

    private static AskPage Until(Session session, CarryKind kind, Carry item) => new(
        Beside(session, item, kind.NeedsUntil ? "Until when?" : "Until when? Empty when nobody knows"), ClockText.Ahead(session.Site, session.Clock), "", (asking, text, setting) =>
        string.IsNullOrWhiteSpace(text) && !kind.NeedsUntil ? Field(asking, kind, item)
        : ClockText.ReadAhead(text, asking.Site, setting.Now, out var mistake) is { } until ? Field(asking, kind, item with { Until = until })
        : Next.Of(asking.Say(mistake)));

    /// <summary>What its kind asks for, then what to be careful with; what that asks for, and the person who looks after it, with it in sight.</summary>
    private static Next Field(Session session, CarryKind kind, Carry item) => Ask(
        session, kind, item, [.. kind.Fields, .. May.GetValueOrDefault(kind.Name, []).Except(kind.Fields, StringComparer.Ordinal)], (asked, whole) => CautionsPage.Before(
            asked, Caution.Of(asked.Site, "carry:" + whole.ItemKind, whole.On),
            YetRecorded.Before(asked.Site, asked.Facts.Equipment, asked.Facts.Now.Carried, whole, asked.By!, asked.Clock),
            careful => Ask(careful, kind, whole, kind.Name == "wash" && CarriedItem.CanHurt(kind.Name, whole.Text, whole.Fields) ? OfAcid : [], (last, item) => Next.Of(last.Open(Owner(last, item))))));

    /// <summary>These fields, one question after the other.</summary>
    private static Next Ask(Session session, CarryKind kind, Carry item, IReadOnlyList<string> names, Func<Session, Carry, Next> then)
    {
        if (names.Count == 0 || (names[0] == "every" && !item.Fields.ContainsKey("point")) || (names[0] == "inside" && item.Fields.GetValueOrDefault("entry") == "no"))
        {
            return then(session, item);
        }

        var name = names[0];
        Next With(Session asking, string text)
        {
            // Whoever is of this site is written by the code, so that the rules know the person.
            var value = name == "allowed-by" ? WhoPage.Only(asking.Site, text)?.Code ?? text : text;
            return WhyNot(asking, kind, name, value) is { } wrong ? Next.Of(asking.Say(wrong, Look.Watch))
                : Ask(asking, kind, value.Length == 0 ? item : item with { Fields = new Dictionary<string, string>(item.Fields, StringComparer.Ordinal) { [name] = value } }, [.. names.Skip(1)], then);
        }

        var question = Beside(session, item, Questions.GetValueOrDefault(name, FirstLetter.Large(name.Replace('-', ' ')) + "?"));
        return Next.Of(session.Open(
            CarryKinds.Words.GetValueOrDefault(name) is { } words ? new PickPage(question, [.. words.Select(w => (w, Means.GetValueOrDefault((name, w), "")))], null, (picking, i, _) => With(picking, words[i]))
            : kind.Fields.Contains(name, StringComparer.Ordinal) ? AskPage.Words(question, "it is nothing without this", With)
            : new AskPage(question, "may stay empty", "", (asking, text, _) => With(asking, text.Trim()))));
    }

    private static AskPage Owner(Session session, Carry item) => new(
        Beside(session, item, "Who looks after it? A code or a part of the name; empty when nobody yet"), "then it is written into the log", "", (asking, text, _) =>
        string.IsNullOrWhiteSpace(text) ? Next.Of(asking, new WriteIt(new OpenCarried(asking.By!, item)))
        : WhoPage.Only(asking.Site, text.Trim()) is { } person ? Next.Of(asking, new WriteIt(new OpenCarried(asking.By!, item with { Owner = person.Code })))
        : Next.Of(asking.Say($"'{text.Trim()}' is nobody, or more than one, of this site")));

    /// <summary>The question below what was answered so far.</summary>
    private static string Beside(Session session, Carry item, string question) =>
        $"{FirstLetter.Large(Say.Kind(item.ItemKind))}, {Place(session, item.On)}: {Say.Visible(item.Text)}. {question}";

    /// <summary>A whole area says that it is one: whoever meant a piece of equipment sees it before the next answer.</summary>
    private static string Place(Session session, string on) => session.Site.FindEquipment(on) is null ? $"the whole area {AreaWords.Of(on)}" : Say.Equipment(session.Site, on);

    /// <summary>Why the journal would not take this answer, said where it is given; null when it does.</summary>
    private static string? WhyNot(Session session, CarryKind kind, string name, string value) =>
        value.Length > 0 && CarriedCheck.OfField(session.Site, kind.Name, name, value, session.By!).FirstOrDefault() is { } mistake
            ? $"{mistake.Wrong}; {Accepted.GetValueOrDefault(name, mistake.Accepted)}"
            : null;

    private static string Name(CarryKind kind) => FirstLetter.Large(kind.Name.Replace('-', ' '));
}
