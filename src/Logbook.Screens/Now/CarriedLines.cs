using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens;

/// <summary>What is open and outlives the shift, past dates first. What can hurt stands above, in full.</summary>
internal static class CarriedLines
{
    public static IEnumerable<Line> Draw(Session session) => session.Facts.Now.Carried.Where(i => !i.IsHazard)
        .OrderByDescending(i => IsPast(session, i)).ThenBy(i => i.Since)
        .SelectMany(i => Gutter.Lines(IsPast(session, i) ? "past" : "open", IsPast(session, i) ? Look.Watch : Look.Strong, Words(session, i), session.Width, session.Height >= 34 ? 3 : 1));

    private static bool IsPast(Session session, CarriedItem item) => item.Until < session.Clock;

    private static string Words(Session session, CarriedItem item)
    {
        var until = item.Until is { } end ? $", {(IsPast(session, item) ? "was due" : "until")} {Say.Time(session.Site, end, session.Clock)}" : "";
        var owner = item.Owner is { } code ? $", {Say.Person(session.Site, code)}" : "";
        return $"{Say.Kind(item.ItemKind)}, {Say.Equipment(session.Site, item.On)}: {item.Text}{until}{owner}; open {Say.Age(session.Site, item.Since, session.Clock)}";
    }
}
