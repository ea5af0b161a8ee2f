using Logbook.Checks;

namespace Logbook.Handover;

/// <summary>The long note of a shift: the page that is handed over, and below it everything that the page sums up.</summary>
public static class LongNote
{
    // A page has room for six curves; here they have a sheet of their own.
    private const int Curves = 24;

    /// <summary>The note of the shift that covers <paramref name="at"/>.</summary>
    public static HandoverNote Of(Desk desk, DateTimeOffset at) => Below(HandoverNote.Of(desk, at), ShiftFacts.Of(desk, at));

    /// <summary>The note that is being handed over.</summary>
    public static HandoverNote InHand(Desk desk) => Below(HandoverNote.InHand(desk), ShiftFacts.InHand(desk));

    /// <summary>That of a page which was accepted, and of the shift that covers <paramref name="at"/>.</summary>
    public static HandoverNote Of(Desk desk, HandoverNote page, DateTimeOffset at) => Below(page, ShiftFacts.Of(desk, at));

    private static HandoverNote Below(HandoverNote page, ShiftFacts facts) => page with
    {
        Sections = [.. page.Sections, Noted.Of(facts), RoundsWalked.Of(facts), ReadingsTaken.Of(facts), WhoWasThere.Of(facts), EachRecord.Of(facts)],
        Trends = Trending.Of(facts, Curves),
    };
}
