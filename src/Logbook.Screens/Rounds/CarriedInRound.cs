using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>
/// Carried items in a round: one whose look is due stands where the walk reaches its equipment. It never takes the field, for
/// what is typed in a burst belongs to the rows; a key of its own looks at it.
/// </summary>
internal static class CarriedInRound
{
    private const string Asks = " Still so? c";

    /// <summary>Row to the items above it whose look is due.</summary>
    public static ILookup<int, CarriedItem> Due(Session session, RoundPage page) =>
        Way(session, page, session.Facts.Now.Carried.Where(i => OnTheWay.LookIsDue(session.Site, i, session.Clock)));

    public static Line Draw(Session session, CarriedItem item) => Line.Of(new Span(
        "   " + TextWidth.Cut(Say.Visible($"CARRIED {Say.Equipment(session.Site, item.On)}, {item.ItemKind.Replace('-', ' ')}: {item.Text}."), session.Width - 4 - Asks.Length) + Asks,
        item.IsHazard ? Look.Strong : Look.Plain));

    /// <summary>What is carried in the area of the present row; behind the last row all that is still due.</summary>
    public static CarriedPage Here(Session session, RoundPage page)
    {
        var here = page.AtEnd
            ? Due(session, page).SelectMany(g => g)
            : Way(session, page, session.Facts.Now.Carried).Where(g => page.Rows[g.Key].Point.Area == page.Row.Point.Area).SelectMany(g => g);
        return new CarriedPage(0, [.. here.Select(i => i.Id)]);
    }

    /// <summary>How many are left when the walk is over; empty when none is.</summary>
    public static string Rest(Session session, RoundPage page) =>
        Due(session, page).Sum(g => g.Count()) is > 0 and var left ? $", c looks at {Say.Count(left, "carried item")} first" : "";

    private static ILookup<int, CarriedItem> Way(Session session, RoundPage page, IEnumerable<CarriedItem> items) =>
        OnTheWay.Of(session.Site, [.. page.Rows.Select(r => r.Point)], items);
}
