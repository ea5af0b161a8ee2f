using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Checks of what every kind of record is given: who, when, on what, in which words.</summary>
public static class Given
{
    /// <summary>A time with the site's offset, to the millisecond that records keep.</summary>
    public static DateTimeOffset Instant(Site site, DateTimeOffset at)
    {
        var local = Calendar.ToSite(site, at);
        return local.AddTicks(-(local.Ticks % TimeSpan.TicksPerMillisecond));
    }

    private const int LongestText = 2000;

    /// <summary>What is accepted instead of an unknown name; where to look when there are too many to list.</summary>
    public static string Instead(string typed, IReadOnlyCollection<string> known, string look) =>
        Spelling.Accepted(typed, known) is { Length: > 0 } accepted ? accepted : look;

    public static IEnumerable<Mistake> Person(Site site, string by)
    {
        if (site.FindPerson(by) is null)
        {
            yield return Mistake.Typed($"'{by}' is not a person of this site", "known: " + Codes(site));
        }
    }

    /// <summary>Somebody of this site who may write: people are closed, never deleted.</summary>
    public static IEnumerable<Mistake> Writer(Site site, State state, string by) => string.IsNullOrWhiteSpace(by)
        ? [Mistake.Typed("it is not said who writes this", "--by CODE with one of: " + Codes(site))]
        : state.IsClosed(by) ? [Mistake.Typed($"{Spelled(site, by)} is closed and writes no more", "use your own code")]
        : Person(site, by);

    private static string Codes(Site site) => string.Join(", ", site.People.Select(p => p.Code));

    private static string Spelled(Site site, string by) => site.FindPerson(by)?.Code ?? by;

    public static IEnumerable<Mistake> Engineer(Site site, string by, string does)
    {
        if (site.FindPerson(by) is { Role: not Role.Engineer } person)
        {
            yield return Mistake.Typed($"{person.Code} is {person.Role.ToString().ToLowerInvariant()}: only an engineer {does}",
                "engineers: " + string.Join(", ", site.People.Where(p => p.Role == Role.Engineer).Select(p => p.Code)));
        }
    }

    public static IEnumerable<Mistake> NotInFuture(DateTimeOffset? at, string what, DateTimeOffset now, Place place)
    {
        if (at > now + Typed.Grace)
        {
            yield return new Mistake(place, $"{what}, {Words.Time(at.Value.ToOffset(now.Offset))}, lies in the future", $"it is {Words.Time(now)} now");
        }
    }

    /// <summary>Not in the future, and not so long ago that a bare time of day would not be taken for it.</summary>
    public static IEnumerable<Mistake> Lately(DateTimeOffset? at, string what, DateTimeOffset now) => at < now - Typed.Lately
        ? [Mistake.Typed($"{what}, {Words.Time(at.Value.ToOffset(now.Offset))}, was more than {Typed.Lately.TotalHours:0} hours ago", "an earlier begin belongs into the text")]
        : NotInFuture(at, what, now, Place.Unknown);

    public static IEnumerable<Mistake> NotOver(DateTimeOffset? end, string what, DateTimeOffset now)
    {
        if (end < now - Typed.Grace)
        {
            yield return Mistake.Typed($"{what}, {Words.Time(end.Value.ToOffset(now.Offset))}, is over already", $"it is {Words.Time(now)} now; a date that was missed belongs into the text");
        }
    }

    public static IEnumerable<Mistake> Text(string? text, string what)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            yield return Mistake.Typed($"{what} is empty", "a few words");
        }

        foreach (var mistake in NotTooLong(text, what, Place.Unknown))
        {
            yield return mistake;
        }
    }

    /// <summary>True for a reason that says something: a digit or a letter or two explain nothing to whoever reads it later.</summary>
    public static bool Says(string? reason)
    {
        var letters = 0;
        return reason?.Any(c => (letters = char.IsLetter(c) ? letters + 1 : 0) == FewestLetters) ?? false;
    }

    // A word such as "new". Judgement, no source.
    private const int FewestLetters = 3;

    /// <summary>Words must fit on a note that is read in ten minutes.</summary>
    public static IEnumerable<Mistake> NotTooLong(string? text, string what, Place place)
    {
        if (text?.Length > LongestText)
        {
            yield return new Mistake(place, $"{what} has {text.Length} characters", $"{LongestText} at most");
        }
    }

    public static IEnumerable<Mistake> Equipment(Site site, string code)
    {
        if (site.FindEquipment(code) is null)
        {
            string[] known = [.. site.Equipment.Select(e => e.Code)];
            var area = Area.All.FirstOrDefault(a => a.Equals(code, StringComparison.OrdinalIgnoreCase));
            string[] there = [.. site.Equipment.Where(e => e.Area == area).Select(e => e.Code)];
            yield return area is null ? Mistake.Typed($"'{code}' is no equipment of this site", Instead(code, known, "the equipment stands in site.toml"))
                : there.Length > 0 ? Mistake.Typed($"'{area}' is an area, no equipment of this site", "its equipment: " + string.Join(", ", there))
                : Mistake.Typed($"'{area}' is an area without equipment of its own", Instead(code, known, "the equipment stands in site.toml"));
        }
    }

    /// <summary>The code as the site spells it, of equipment or an area that is known.</summary>
    public static string Code(Site site, string typed) =>
        site.FindEquipment(typed)?.Code ?? Area.All.First(a => a.Equals(typed, StringComparison.OrdinalIgnoreCase));

    public static IEnumerable<Mistake> EquipmentOrArea(Site site, string code)
    {
        if (site.FindEquipment(code) is null && !Area.All.Contains(code, StringComparer.OrdinalIgnoreCase))
        {
            string[] known = [.. site.Equipment.Select(e => e.Code), .. Area.All];
            yield return Mistake.Typed($"'{code}' is no equipment or area of this site", Instead(code, known, "areas: " + string.Join(", ", Area.All)));
        }
    }
}
