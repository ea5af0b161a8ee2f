using System.CommandLine;
using System.Globalization;
using Logbook.Checks;
using Logbook.Plant;

namespace Logbook;

/// <summary>Options that many commands share, each with one meaning.</summary>
internal static class Options
{
    public static readonly Option<string?> Site = new("--site") { Description = "The site folder; else LOGBOOK_SITE, else the current folder.", HelpName = "DIR", Recursive = true };
    public static readonly Option<double?> Wait = Seconds();

    private static Option<double?> Seconds()
    {
        var wait = new Option<double?>("--wait") { Description = "Seconds to wait for another terminal that is writing (5 unless said).", HelpName = "SECONDS", Recursive = true };
        wait.Validators.Add(given =>
        {
            if (given.GetValueOrDefault<double?>() is not (null or (>= 0 and <= 3600)))
            {
                given.AddError("--wait takes 0 to 3600 seconds.");
            }
        });
        return wait;
    }

    public static Option<bool> Json() => new("--json") { Description = "One JSON object instead of text." };

    public static Option<bool> Results() => new("--results") { Description = "Every computed result; unless said of many those that a finding speaks of, and some that have limits." };

    public static Option<string?> By() => new("--by") { Description = "Your code, as in the site's list of people.", HelpName = "CODE" };

    public static Option<string?> From() => new("--from") { Description = "Begin, ISO 8601; without offset it is site time; a plain date is its first moment.", HelpName = "TIME" };

    public static Option<string?> To() => new("--to") { Description = "End (not included), ISO 8601; without offset it is site time; a plain date is included.", HelpName = "TIME" };

    public static Option<string?> AsOf() => new("--as-of") { Description = "As the journal stood at that time, or at the end of that day.", HelpName = "TIME" };

    public static Option<string?> Text(string name, string help, string what) => new(name) { Description = help, HelpName = what };

    public static Option<string[]> Many(string name, string help, string what) => new(name) { Description = help, HelpName = what, DefaultValueFactory = _ => [] };

    /// <summary>The time an option gives, or null when it was not given; a mistake that names the option when it cannot be read.</summary>
    public static DateTimeOffset? Time(ParseResult parse, Option<string?> option, Site site, DateTimeOffset now, ICollection<Mistake> mistakes) =>
        Read(parse, option, site, now, mistakes, Typed.Time);

    /// <summary>As <see cref="Time"/>, for what is still to come: <c>06:00</c> after six is the next day's.</summary>
    public static DateTimeOffset? Ahead(ParseResult parse, Option<string?> option, Site site, DateTimeOffset now, ICollection<Mistake> mistakes) =>
        Read(parse, option, site, now, mistakes, Typed.TimeAhead);

    /// <summary>As <see cref="Time"/>, for what has been: <c>22:40</c> after midnight is last night's.</summary>
    public static DateTimeOffset? Back(ParseResult parse, Option<string?> option, Site site, DateTimeOffset now, ICollection<Mistake> mistakes) =>
        Read(parse, option, site, now, mistakes, Typed.TimeBack);

    private delegate DateTimeOffset? Reading(string text, Site site, DateTimeOffset now, Place place, out Mistake? mistake);

    private static DateTimeOffset? Read(ParseResult parse, Option<string?> option, Site site, DateTimeOffset now, ICollection<Mistake> mistakes, Reading read)
    {
        if (parse.GetValue(option) is not { } text)
        {
            return null;
        }

        var time = read(Day(option, text), site, now, Place.Unknown, out var mistake);
        if (mistake is not null)
        {
            mistakes.Add(mistake with { Wrong = $"{option.Name}: {mistake.Wrong}" });
        }

        return time;
    }

    /// <summary>As <see cref="Time"/>, but never later than now: what is still to come has been missed by nobody. The end of today is now.</summary>
    /// <param name="now">With the site's offset.</param>
    public static DateTimeOffset? Past(ParseResult parse, Option<string?> option, Site site, DateTimeOffset now, List<Mistake> mistakes)
    {
        var time = Time(parse, option, site, now, mistakes);
        if (time <= now || time is null)
        {
            return time;
        }

        mistakes.AddRange(PlainDate(parse.GetValue(option)!) == DateOnly.FromDateTime(now.DateTime) ? [] : Given.NotInFuture(time, option.Name, now, Place.Unknown));
        return mistakes.Count > 0 ? null : now;
    }

    /// <summary>A plain date is a whole day: a stretch begins where it begins and ends where it ends.</summary>
    private static string Day(Option<string?> option, string text) =>
        PlainDate(text) is not { } date || date == DateOnly.MaxValue ? text
        : option.Name switch
        {
            "--from" or "--learned-from" => Midnight(date),
            "--to" or "--learned-to" or "--as-of" => Midnight(date.AddDays(1)),
            _ => text,
        };

    private static DateOnly? PlainDate(string text) =>
        DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;

    private static string Midnight(DateOnly date) => date.ToString("yyyy-MM-dd'T00:00'", CultureInfo.InvariantCulture);

    /// <summary>Runs <paramref name="action"/> with the begin and the end that were given, else with the usual ones.</summary>
    public static int Span(
        Shell shell, ParseResult parse, Desk desk, (Option<string?> Given, DateTimeOffset Usual) from, (Option<string?> Given, DateTimeOffset Usual) to,
        Func<DateTimeOffset, DateTimeOffset, int> action)
    {
        var mistakes = new List<Mistake>();
        var begin = Time(parse, from.Given, desk.Site, desk.Now, mistakes) ?? from.Usual;
        var end = Time(parse, to.Given, desk.Site, desk.Now, mistakes) ?? to.Usual;
        return mistakes.Count > 0 ? shell.Refuse(mistakes) : action(begin, end);
    }

    /// <summary>NAME=VALUE settings; a mistake for each that is none.</summary>
    public static Dictionary<string, string> Fields(IEnumerable<string> settings, ICollection<Mistake> mistakes)
    {
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var setting in settings)
        {
            var parts = setting.Split('=', 2);
            if (parts.Length != 2 || parts[0].Length == 0)
            {
                mistakes.Add(Mistake.Typed($"--set {setting}: not a setting", "--set NAME=VALUE"));
                continue;
            }

            fields[parts[0]] = parts[1];
        }

        return fields;
    }
}
