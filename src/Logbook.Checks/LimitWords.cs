using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>
/// The words of a broken limit, all in one table. They remind of the site's own procedures and what to keep clear of; they
/// never ask to wait, to repeat, to sample or to go there. Common practice, no source.
/// </summary>
public static class LimitWords
{
    private const string KeepClear = "follow the site's high-temperature procedure now; keep clear of hatches, do not sample";

    // Smelt meets too little or too strong wash: an explosion hazard that recovery boiler practice knows (from memory, no source at hand).
    // One wording, that of the site's caution: two of them in one note would read as two different things to do.
    private const string CallTheBoiler = "call the recovery boiler first, before anything is changed here: without the right wash its dissolving tank can explode; follow its procedure";

    /// <param name="Area">Area code; null for every area.</param>
    /// <param name="Has">A word in the point's description, or its unit; null for every point.</param>
    /// <param name="High">Beyond a high or a low limit; null for both.</param>
    /// <param name="What">What it means, with {0} for the limit; null to say the value and how far it is beyond.</param>
    private sealed record Row(string? Area, string? Has, bool? High, Level Level, string? What, string Ask);

    /// <summary>The first row that fits counts.</summary>
    private static readonly Row[] Table =
    [
        new("slaker", "to boiling", false, Level.Urgent, "within {0} of boiling", KeepClear),
        new("slaker", "to boiling", false, Level.Watch, "within {0} of boiling", "less lime or cooler green liquor brings it down, as the site's procedure says; keep clear of hatches"),
        new("slaker", "temperature", true, Level.Urgent, null, KeepClear),
        new("green-liquor-cooler", "to the slaker", true, Level.Urgent, null, "the slaker may boil over: " + KeepClear),
        new("slaker", "flow to the slaker", false, Level.Urgent, null, "lime without liquor boils over: follow the site's lost-flow procedure now; keep clear of hatches, do not sample"),
        new("slaker", "hatch", null, Level.Urgent, null, "keep clear, hot caustic blinds; follow the site's procedure now"),
        new("weak-wash", "level", false, Level.Urgent, null, CallTheBoiler),
        new("weak-wash", "level", false, Level.Watch, null, CallTheBoiler),
        new("weak-wash", "hours of weak wash", false, Level.Watch, null, CallTheBoiler),
        new("weak-wash", "flow to the dissolving tank", false, Level.Urgent, null, CallTheBoiler),
        new("weak-wash", "flow to the dissolving tank", false, Level.Watch, null, CallTheBoiler),
        new("weak-wash", "dissolving tank density", null, Level.Urgent, null, CallTheBoiler),
        new("weak-wash", "dissolving tank density", null, Level.Watch, null, CallTheBoiler),
        new(null, "ppm", true, Level.Urgent, null, "treat it as true: leave, warn others, and follow the site's gas procedure now"),
        new(null, "ppm", true, Level.Watch, null, "follow the site's gas procedure; smell is no warning"),
        new(null, "eyewash", null, Level.Urgent, null, "no caustic work there without another eyewash in reach; follow the site's procedure now"),
        new(null, "level", true, Level.Urgent, null, "close to overflowing: follow the site's procedure now"),
        new(null, null, null, Level.Urgent, null, "follow the site's procedure for it now"),
    ];

    /// <summary>How far down the table a finding's words stand: what can hurt people comes first there, what only the site's procedure knows last.</summary>
    public static int Place(Finding finding) =>
        Array.FindIndex(Table, r => finding.Text.Contains(r.Ask, StringComparison.Ordinal)) is >= 0 and var place ? place : Table.Length;

    /// <summary>What the broken limit means, or null when the value says it.</summary>
    public static string? What(Point point, bool high, double limit)
    {
        var what = Table.FirstOrDefault(r => r.What is not null && Fits(r, point, high))?.What;
        return what?.Replace("{0}", $"{Words.Number(limit)} {point.Unit}", StringComparison.Ordinal);
    }

    /// <summary>What the broken limit asks for, or null.</summary>
    public static string? Ask(Point point, bool high, Level level) =>
        Table.FirstOrDefault(r => r.Level == level && Fits(r, point, high))?.Ask;

    private static bool Fits(Row row, Point point, bool high) =>
        (row.Area is null || row.Area.Equals(point.Area, StringComparison.Ordinal))
        && (row.High is null || row.High == high)
        && (row.Has is null || point.Unit.Name.Equals(row.Has, StringComparison.Ordinal) || point.Description.Contains(row.Has, StringComparison.OrdinalIgnoreCase));
}
