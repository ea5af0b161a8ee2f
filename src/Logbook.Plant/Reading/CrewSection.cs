namespace Logbook.Plant.Reading;

/// <summary>[crews]: names and the pattern that they share; refused unless exactly one crew is on each shift of each day.</summary>
internal static class CrewSection
{
    public static CrewPattern Read(Fields root, IReadOnlyList<ShiftTime> shifts)
    {
        if (root.Table("crews") is not { } table)
        {
            root.Wrong("crews", "[crews] is missing", "names, pattern, anchor and offset_days are needed");
            return Unknown([]);
        }

        var names = table.Texts("names");
        var pattern = table.Text("pattern").Replace(" ", "", StringComparison.Ordinal);
        var anchor = table.Date("anchor");
        var offset = table.Whole("offset_days", 0, 366);
        foreach (var key in new[] { "names", "anchor", "offset_days" }.Where(k => !table.Has(k)))
        {
            table.Wrong(key, $"[crews] has no {key}", "names, pattern, anchor and offset_days are needed");
        }

        foreach (var (text, place) in names.Where(n => n.Text.Length == 0 || !n.Text.All(char.IsAsciiLetterOrDigit)))
        {
            table.Keep<string>(null, new Mistake(place, $"crew '{text}' has other signs", "letters and digits: it is a part of the shift's name"));
        }

        table.RefuseOthers();
        if (names.Count == 0 || pattern.Length == 0 || anchor is null || offset is null)
        {
            return Unknown([.. names.Select(n => n.Text)]);
        }

        var crews = new CrewPattern([.. names.Select(n => n.Text)], pattern, anchor.Value, offset.Value);
        CheckCoverage(table, crews, shifts);
        return crews;
    }

    private static CrewPattern Unknown(IReadOnlyList<string> names) => new(names, "o", default, 0);

    private static void CheckCoverage(Fields table, CrewPattern crews, IReadOnlyList<ShiftTime> shifts)
    {
        var codes = shifts.Select(s => s.Code).ToList();
        var strange = crews.Pattern.Where(c => c != 'o' && !codes.Contains(c.ToString(), StringComparer.OrdinalIgnoreCase)).Distinct().ToList();
        if (strange.Count > 0)
        {
            table.Wrong("pattern", $"pattern has '{strange[0]}'", $"one letter a day: {string.Join(", ", codes)}, or o for off");
            return;
        }

        // The pattern repeats after its length, so its days are all the days there are.
        for (var day = 0; day < crews.Pattern.Length; day++)
        {
            foreach (var code in codes)
            {
                var on = crews.On(crews.Anchor.AddDays(day), code).ToList();
                if (on.Count != 1)
                {
                    table.Wrong("pattern", $"on {crews.Anchor.AddDays(day):yyyy-MM-dd} shift {code} has {(on.Count == 0 ? "no crew" : $"crews {string.Join(" and ", on)}")}", "exactly one crew on each shift of each day");
                    return;
                }
            }
        }
    }
}
