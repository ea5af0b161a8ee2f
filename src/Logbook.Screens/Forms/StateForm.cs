using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>What a piece of equipment does: which, what, since when, why.</summary>
internal static class StateForm
{
    private static readonly Dictionary<string, string> Means = new(StringComparer.Ordinal)
    {
        ["acid"] = "washed with acid: its caution is shown", ["out"] = "not to be used", ["standby"] = "ready to run",
    };

    public static Next Open(Session session) => Next.Of(session.Open(FinderPage.ForEquipment("Which equipment? It runs unless somebody has said otherwise", (found, code) => Next.Of(found.Open(State(found, code))))));

    private static PickPage State(Session session, string code) => new(
        $"{Say.Equipment(session.Site, code)}: what does it do? Up to now {EquipmentWords.Of(session, code)}", [.. EquipmentStates.All.Select(s => (s, Means.GetValueOrDefault(s, "")))], null,
        (picking, i, _) => Next.Of(picking.Open(Since(picking, code, EquipmentStates.All[i]))));

    private static AskPage Since(Session session, string code, string state) => new(
        $"{FirstLetter.Large(state)} since when?", ClockText.Accepted(session.Site, session.Clock) + "; empty means now", "", (asking, text, setting) =>
        string.IsNullOrWhiteSpace(text) ? Careful(asking, code, state, null)
        : RoundAsks.At(asking, text, setting, at => Careful(asking, code, state, at)));

    private static Next Careful(Session asking, string code, string state, DateTimeOffset? since) => CautionsPage.Before(
        asking, Caution.Of(asking.Site, "state:" + state, code),
        YetRecorded.Before(asking.Site, asking.Facts.Equipment, asking.Facts.Now.Carried, new EquipmentStatus(code, state, since ?? asking.Clock, null, 0, asking.By!), asking.Clock),
        s => Next.Of(s.Open(Why(code, state, since))));

    private static AskPage Why(string code, string state, DateTimeOffset? since) => new(
        "Why?", "a few words; may stay empty", "", (asking, text, _) => Next.Of(asking, new WriteIt(new SetState(asking.By!, code, Say.Equipment(asking.Site, code), state, since, text.Trim()))));
}
