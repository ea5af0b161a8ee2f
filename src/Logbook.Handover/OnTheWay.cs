using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover;

/// <summary>Carried items where a walk reaches them, so that nobody has to make a walk of their own for them.</summary>
public static class OnTheWay
{
    // Judgement, no source.
    private static readonly TimeSpan OthersSeen = TimeSpan.FromDays(7);

    /// <summary>
    /// Place in the walk to the items there: before the first point of their equipment, else of their area. What can hurt stands
    /// first, then the oldest. What lies where the walk does not lead is not among them.
    /// </summary>
    public static ILookup<int, CarriedItem> Of(Site site, IReadOnlyList<Point> walk, IEnumerable<CarriedItem> items) => items
        .OrderByDescending(i => i.IsHazard).ThenBy(i => i.Since)
        .Select(i => (Item: i, Place: Place(site, [.. walk], i)))
        .Where(x => x.Place >= 0)
        .ToLookup(x => x.Place, x => x.Item);

    /// <summary>True when it is to be looked at: what can hurt in each shift, anything else in each week. A look in vain is a look.</summary>
    public static bool LookIsDue(Site site, CarriedItem item, DateTimeOffset now) =>
        IsLong(site, item, item.Confirmed is { } look && look.At > item.LastSeen ? look.At : item.LastSeen, now);

    /// <summary>True when this is longer ago than an item of its kind may go without a look.</summary>
    internal static bool IsLong(Site site, CarriedItem item, DateTimeOffset since, DateTimeOffset now) =>
        item.IsHazard ? Say.ShiftsSince(site, since, now) > 0 : now - since > OthersSeen;

    private static int Place(Site site, List<Point> walk, CarriedItem item)
    {
        var area = site.FindEquipment(item.On)?.Area ?? item.On;
        var place = walk.FindIndex(p => item.On.Equals(p.Equipment, StringComparison.OrdinalIgnoreCase));
        return place >= 0 ? place : walk.FindIndex(p => area.Equals(p.Area, StringComparison.OrdinalIgnoreCase));
    }
}
