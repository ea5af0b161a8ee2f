using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>PINs that the records tell of and the file beside the journal no longer holds: setting one anew is a reset.</summary>
public static class LostPins
{
    /// <summary>The people who still write and whose PIN is gone, with the record that set it last, oldest first.</summary>
    public static IReadOnlyList<(string Code, long Seq)> Of(State state, Pins pins) =>
        [.. state.People.Keys.Where(code => !state.IsClosed(code)).Select(code => (code, Seq: Set(state, pins, code) ?? 0)).Where(p => p.Seq > 0).OrderBy(p => p.Seq)];

    /// <summary>The record that set the PIN which is gone; null when it is kept, or none was ever set.</summary>
    public static long? Set(State state, Pins pins, string code) => pins.Has(code) ? null : state.People.GetValueOrDefault(code)?.Pin;

    internal static string Words(string code, long set) => $"{code}'s PIN was set {Say.Ref(set)} and is no longer kept in journal/pins";

    /// <summary>
    /// Why nobody sets the own lost PIN; null when it may be. It is reset by a supervisor or an engineer, as ever; when no PIN
    /// of theirs is kept either, one of them has to begin.
    /// </summary>
    internal static string? WhyNotOwn(Desk desk, Pins pins, string code, long set)
    {
        var leads = desk.Site.People.Where(p => IsLead(p) && !desk.State.IsClosed(p.Code)).ToList();
        var kept = leads.Where(p => pins.Has(p.Code)).Select(p => p.Code).ToList();
        return kept.Count > 0 ? $"{Words(code, set)}: {string.Join(" or ", kept)} resets it: logbook people pin {code} --by {kept[0]}"
            : IsLead(desk.Site.FindPerson(code)) ? null
            : $"{Words(code, set)}, nor is any of a supervisor or an engineer ({string.Join(", ", leads.Select(p => p.Code))}): one of them sets the own one anew and then resets this one";
    }

    internal static bool IsLead(Person? person) => person is { Role: Role.Supervisor or Role.Engineer };
}
