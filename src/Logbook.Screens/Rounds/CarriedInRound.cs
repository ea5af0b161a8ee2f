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
        "   " + TextWidth.Cut(Say.Visible($"CARRIED {Say.Equipment(session.Site, item.On)}, {Say.Kind(item.ItemKind)}: {item.Text}."), session.Width - 4 - Asks.Length) + Asks,
        item.IsHazard ? Look.Strong : Look.Plain));

    /// <summary>
    /// What is carried in the area of the present row, the mark on what is due there. The field may have gone on meanwhile: what is due
    /// in the area of the row answered last stands there too, and has the mark. Behind the last row all that is still due.
    /// </summary>
    public static CarriedPage Here(Session session, RoundPage page)
    {
        var due = Due(session, page);
        if (page.AtEnd)
        {
            return new CarriedPage(0, [.. due.SelectMany(g => g).Select(i => i.Id)]);
        }

        IEnumerable<CarriedItem> In(ILookup<int, CarriedItem> way, int row) => way.Where(g => page.Rows[g.Key].Point.Area == page.Rows[row].Point.Area).SelectMany(g => g);
        var left = page.Answered is { } last ? In(due, last).Select(i => i.Id).ToHashSet() : [];
        var here = In(Way(session, page, session.Facts.Now.Carried), page.Current).Select(i => i.Id);
        var first = left.Count > 0 ? left : In(due, page.Current).Select(i => i.Id).ToHashSet();
        return CarriedPage.Of(session, [.. left.Union(here)], i => first.Contains(i.Id));
    }

    /// <summary>How many are left when the walk is over; empty when none is.</summary>
    public static string Rest(Session session, RoundPage page) =>
        Due(session, page).Sum(g => g.Count()) is > 0 and var left ? $", c looks at {Say.Count(left, "carried item")} first" : "";

    private static ILookup<int, CarriedItem> Way(Session session, RoundPage page, IEnumerable<CarriedItem> items) =>
        OnTheWay.Of(session.Site, [.. page.Rows.Select(r => r.Point)], items);
}
