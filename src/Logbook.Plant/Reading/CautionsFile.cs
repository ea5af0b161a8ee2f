namespace Logbook.Plant.Reading;

/// <summary>cautions.toml: what the site wants to be reminded of, and when.</summary>
internal static class CautionsFile
{
    private static readonly string[] States = ["running", "starting", "stopped", "standby", "washing", "acid", "draining", "out"];

    private static readonly string[] Carried =
    [
        "action", "isolation", "permit", "bypass", "temporary-change", "out-of-service", "safety-equipment", "wash", "transfer", "delivery", "sample", "injury", "release",
    ];

    public static IReadOnlyList<Caution> Read(string text, KnownPoints points, List<Mistake> mistakes)
    {
        if (TomlFile.Parse(SiteFiles.CautionsToml, text, mistakes) is not { } table)
        {
            return [];
        }

        var root = new Fields(table, SiteFiles.CautionsToml, mistakes);
        var cautions = root.Tables("caution").Select(c => One(c, points)).ToList();
        root.RefuseOthers();
        return cautions;
    }

    private static Caution One(Fields table, KnownPoints points)
    {
        var approved = table.OptionalText("approved_by");
        var caution = new Caution(
            table.Text("hazard"), Triggers(table, points), table.Text("text"), table.Text("ppe"), table.Text("first_aid"),
            table.Text("source"), table.Text("revision"), string.IsNullOrWhiteSpace(approved) ? null : approved);
        table.RefuseOthers();
        return caution;
    }

    private static IReadOnlyList<string> Triggers(Fields table, KnownPoints points)
    {
        IReadOnlyList<(string Text, Place Place)> triggers = table.Raw("trigger") switch
        {
            List<TomlValue> => table.Texts("trigger"),
            _ => [(table.Text("trigger"), table.PlaceOf("trigger"))],
        };
        foreach (var (trigger, place) in triggers.Where(t => t.Text.Length > 0))
        {
            table.Keep<string>(null, WhyNot(trigger, place, points));
        }

        return [.. triggers.Select(t => t.Text)];
    }

    private static Mistake? WhyNot(string trigger, Place place, KnownPoints points)
    {
        var (kind, name) = trigger.Split(':', 2) is [var before, var after] ? (before, after) : (trigger, "");
        return kind switch
        {
            "always" when name.Length == 0 => null,
            "state" => Unless(States, name, "state", place),
            "carry" => name.Split('@', 2) is [var item, var area] ? Unless(Carried, item, "carried kind", place) ?? Unless([.. Area.All], area, "area", place) : Unless(Carried, name, "carried kind", place),
            "limit" => points.WhyNot(name, place),
            "sample" => Unless([.. points.Samples], name, "sample", place),
            "area" => Unless([.. Area.All], name, "area", place),
            _ => new Mistake(place, $"trigger '{trigger}' is unknown", "accepted: always, state:STATE, carry:KIND, carry:KIND@AREA, limit:TAG, sample:NAME, area:AREA"),
        };
    }

    private static Mistake? Unless(string[] accepted, string name, string what, Place place) =>
        accepted.Contains(name, StringComparer.Ordinal) ? null : new Mistake(place, $"{what} '{name}' is unknown", Spelling.Accepted(name, accepted));
}
