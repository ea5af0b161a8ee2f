namespace Logbook.Plant.Reading;

/// <summary>site.toml: what the site is called and where, its shifts, crews, people, equipment and reasons.</summary>
internal static class SiteSections
{
    private static readonly string[] NotTaken =
        ["no time", "forgot", "equipment down", "unsafe to reach", "instrument faulty", "sample point blocked", "upset", "weather", "other"];

    public static TimeZoneInfo Zone(Fields site)
    {
        var id = site.Text("time_zone");
        if (id.Length == 0)
        {
            return TimeZoneInfo.Utc;
        }

        if ((id.Contains('/', StringComparison.Ordinal) || id == "UTC") && TimeZoneInfo.TryFindSystemTimeZoneById(id, out var zone))
        {
            return zone;
        }

        var nearest = Spelling.Nearest(id, TimeZoneInfo.GetSystemTimeZones().Select(z => z.Id));
        site.Wrong("time_zone", $"time zone '{id}' is unknown here", $"an IANA name as in America/New_York{(nearest.Count > 0 ? $"; nearest: {string.Join(", ", nearest)}" : "")}");
        return TimeZoneInfo.Utc;
    }

    public static double Altitude(Fields site)
    {
        var altitude = site.Number("altitude_m") ?? 0;
        if (altitude is < -500 or > 6000)
        {
            site.Wrong("altitude_m", "altitude_m is no place for a mill", "metres above the sea, -500 to 6000");
        }

        return altitude;
    }

    public static IReadOnlyList<ShiftTime> Shifts(Fields root)
    {
        var shifts = new List<ShiftTime>();
        foreach (var table in root.Tables("shift"))
        {
            var code = table.Text("code");
            if (code.Length > 0 && (code.Length != 1 || !char.IsAsciiLetter(code[0]) || code is "o" or "O"))
            {
                table.Wrong("code", $"shift code '{code}' does not fit the pattern", "one letter, not 'o', which is off");
            }

            RefuseTwice(table, "code", code, shifts.Select(s => s.Code));
            var starts = Times.Parse(table.Text("starts"));
            if (starts is null && table.Has("starts"))
            {
                table.Wrong("starts", "starts is no time of day", "as in \"07:00\"");
            }
            else if (shifts.Any(s => s.Starts == starts))
            {
                table.Wrong("starts", $"two shifts start at {starts:HH:mm}");
            }

            table.RefuseOthers();
            shifts.Add(new ShiftTime(code, starts ?? default));
        }

        if (shifts.Count == 0)
        {
            root.Wrong("shift", "no shift is described", "[[shift]] with code and starts");
        }

        return shifts;
    }

    public static IReadOnlyList<Person> People(Fields root, IReadOnlyList<string> crews)
    {
        var people = new List<Person>();
        foreach (var table in root.Tables("person"))
        {
            var code = table.Code("code");
            RefuseTwice(table, "code", code, people.Select(p => p.Code));
            var role = table.OneOf("role", ["operator", "supervisor", "engineer"]);
            var person = new Person(code, table.Text("name"), Enum.TryParse<Role>(role, ignoreCase: true, out var known) ? known : Role.Operator, Crew(table, crews));
            table.RefuseOthers();
            people.Add(person);
        }

        return people;
    }

    /// <summary>Names no crew wrong when the crews themselves could not be read.</summary>
    private static string? Crew(Fields table, IReadOnlyList<string> crews) =>
        crews.Count == 0 ? table.OptionalText("crew") : table.OneOf("crew", [.. crews], required: false);

    public static IReadOnlyList<Equipment> Equipment(Fields root)
    {
        var equipment = new List<Equipment>();
        foreach (var table in root.Tables("equipment"))
        {
            var code = table.Code("code");
            RefuseTwice(table, "code", code, equipment.Select(e => e.Code));
            equipment.Add(new Equipment(code, table.Text("name"), table.OneOf("area", [.. Area.All]) ?? ""));
            table.RefuseOthers();
        }

        return equipment;
    }

    public static Reasons Reasons(Fields root)
    {
        var table = root.Table("reasons");
        var reasons = new Reasons(
            List(table, "not_taken", NotTaken),
            List(table, "relief", ["injured or ill", "called away", "other"]),
            List(table, "not_yet", ["critical step running", "relief not here", "other"]));
        table?.RefuseOthers();
        return reasons;
    }

    /// <summary>Each reason is chosen by its digit, so nine are the most.</summary>
    private static IReadOnlyList<string> List(Fields? table, string key, IReadOnlyList<string> usual)
    {
        if (table is null || !table.Has(key))
        {
            return usual;
        }

        var reasons = table.Texts(key);
        if (reasons.Count is 0 or > 9 || reasons.Any(r => r.Text.Trim().Length == 0))
        {
            table.Wrong(key, $"{key} cannot be chosen by a digit", "one to nine reasons, none empty");
        }

        return [.. reasons.Select(r => r.Text)];
    }

    /// <summary>Null when the site cites none: then nothing is computed per person.</summary>
    public static Policy? Policy(Fields root, IReadOnlyList<Person> people)
    {
        if (root.Table("policy") is not { } table)
        {
            return null;
        }

        var readers = table.Texts("readers");
        if (readers.Count == 0)
        {
            table.Wrong("readers", "[policy] names no readers", "codes of people, as in readers = [\"sup1\"]");
        }

        foreach (var (code, place) in readers.Where(r => !people.Any(p => p.Code.Equals(r.Text, StringComparison.OrdinalIgnoreCase))))
        {
            table.Keep<string>(null, new Mistake(place, $"reader '{code}' is nobody of this site", Spelling.Accepted(code, [.. people.Select(p => p.Code)])));
        }

        var policy = new Policy(table.Text("purpose"), [.. readers.Select(r => r.Text)], table.Text("retention"), table.Text("consultation"));
        table.RefuseOthers();
        return policy;
    }

    internal static void RefuseTwice(Fields table, string key, string value, IEnumerable<string> before)
    {
        if (value.Length > 0 && before.Contains(value, StringComparer.OrdinalIgnoreCase))
        {
            table.Wrong(key, $"{table.Title} {key} '{value}' comes twice", "each has its own, capitals or not");
        }
    }
}
