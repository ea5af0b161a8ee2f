using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Carried items in words. A field that the program does not know is printed too: nothing given is dropped.</summary>
internal static class Carried
{
    /// <summary>Kind, place, text, date, owner and fields: <c>action, Classifier: tighten guard bolt; owner V. Stone</c>.</summary>
    public static string Words(Site site, Carry carry, DateTimeOffset near) =>
        $"{Say.Kind(carry.ItemKind)}, {Say.Equipment(site, carry.On)}: {Say.Visible(carry.Text)}"
        + Until(site, carry.Until, near) + Owner(site, carry.Owner) + Fields(carry.Fields);

    // How often its check is due, which the due list asks for.
    private static readonly string[] OfPaper = ["every"];

    /// <summary>The text with date, owner, fields and change; <paramref name="without"/> names the fields said elsewhere.</summary>
    /// <param name="brief">Without the owner and what only the paper needs.</param>
    public static string Rest(Site site, CarriedItem item, DateTimeOffset now, bool brief, params string[] without) =>
        Say.Visible(item.Text) + Until(site, item.Until, now) + (brief ? "" : Owner(site, item.Owner))
        + Fields(item.Fields.Where(f => !Stands(item.Text, $"{f.Key} {f.Value}") && !without.Concat(brief ? OfPaper : []).Contains(f.Key, StringComparer.OrdinalIgnoreCase)))
        + Changes(site, item, now);

    // What was said to change before that is read with all that belongs to the item. Judgement, no source.
    private static readonly TimeSpan Lately = TimeSpan.FromDays(1);

    /// <summary>What was said to have changed in the last day, the newest change whenever it was; the newest last.</summary>
    private static string Changes(Site site, CarriedItem item, DateTimeOffset now) => string.Concat(item.Changes.Where((look, i) => i == item.Changes.Count - 1 || now - look.At <= Lately)
        .Select((look, i) => $"; {(i == 0 ? "changed " : "")}{Say.Time(site, look.At, now)}, {Say.Visible(look.Changed!)}"));

    /// <summary>Who saw it last, who opened it, when, how long ago and in which record.</summary>
    public static string Opened(Site site, CarriedItem item, DateTimeOffset now) =>
        $"{Looked(site, item, now)}{Say.Person(site, item.By)} {Say.Time(site, item.Since, now)}{(Say.ShiftsSince(site, item.Since, now) == 0 ? "" : ", " + Say.Age(site, item.Since, now))} {Say.Ref(item.Id)}";

    /// <summary>
    /// A hazard is looked at in each shift, anything else in each week: who did and when, or that nobody has. A look that is too
    /// long ago is told as what it was: it does not become none at the minute of a shift change. Empty for what is new.
    /// </summary>
    public static string Looked(Site site, CarriedItem item, DateTimeOffset now) => item.Confirmed switch
    {
        { Seen: false } => "Not seen. ",
        { } look when NotSeen(site, item, now) => $"Looked at {Say.Time(site, look.At, now)} {Say.Person(site, look.By)}, {NotSince(site, item, now)}. ",
        { } look => $"Seen {Say.Time(site, look.At, now)} {Say.Person(site, look.By)}. ",
        null => !NotSeen(site, item, now) ? "" : item.IsHazard && Say.ShiftsSince(site, item.LastSeen, now) == 1 ? "Not seen since the shift change. " : "Not seen. ",
    };

    private static string NotSince(Site site, CarriedItem item, DateTimeOffset now) =>
        !item.IsHazard ? "not this week" : Say.ShiftsSince(site, item.LastSeen, now) is > 1 and var shifts ? $"not for {Say.Count(shifts, "shift")}" : "not since the shift change";

    /// <summary>True when its look is due and nobody has found it, or the last look was in vain.</summary>
    public static bool NotSeen(Site site, CarriedItem item, DateTimeOffset now) =>
        item.Confirmed is { Seen: false } || OnTheWay.IsLong(site, item, item.LastSeen, now);

    /// <summary>
    /// True when a look was due by then and there was none: for what can hurt a whole shift that has ended, since in one that runs
    /// there is time for it yet.
    /// </summary>
    public static bool LookMissed(Site site, CarriedItem item, DateTimeOffset now) => !item.IsHazard ? NotSeen(site, item, now)
        : item.LastSeen < now && Calendar.Shifts(site, item.LastSeen, now).Any(s => s.Start > item.LastSeen && s.End <= now);

    private static string Until(Site site, DateTimeOffset? until, DateTimeOffset near) =>
        until is not { } end ? "" : end < near ? $"; until {Say.Time(site, end, near)}, PAST" : $"; until {Say.Time(site, end, near)}";

    private static string Owner(Site site, string? owner) => string.IsNullOrEmpty(owner) ? "" : $"; owner {Say.Person(site, owner)}";

    /// <summary>A field that the text ends a word with is said already: <c>card 124</c>, not <c>card 12</c>.</summary>
    private static bool Stands(string text, string field) =>
        text.IndexOf(field, StringComparison.OrdinalIgnoreCase) is >= 0 and var at
        && (at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (at + field.Length == text.Length || !char.IsLetterOrDigit(text[at + field.Length]));

    private static string Fields(IEnumerable<KeyValuePair<string, string>> fields) =>
        string.Concat(fields.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"; {Say.Visible(f.Key)} {Say.Visible(f.Value)}"));
}
