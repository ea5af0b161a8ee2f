namespace Logbook.Plant.Reading;

/// <summary>[[round]]: what is walked together, and when.</summary>
internal static class RoundSection
{
    public static IReadOnlyList<Round> Read(Fields root, KnownPoints points)
    {
        var rounds = new List<Round>();
        foreach (var table in root.Tables("round"))
        {
            var id = table.Code("id");
            SiteSections.RefuseTwice(table, "id", id, rounds.Select(r => r.Id));
            rounds.Add(new Round
            {
                Id = id,
                Title = table.Text("title"),
                Schedule = Schedule(table),
                Early = table.Duration("early") ?? TimeSpan.FromMinutes(15),
                Late = table.Duration("late") ?? TimeSpan.FromMinutes(15),
                Takes = table.Duration("takes") ?? TimeSpan.FromMinutes(25),
                Points = Points(table, points),
                Field = table.OneOf("place", ["field", "panel"], required: false) == "field",
            });
            table.RefuseOthers();
        }

        return rounds;
    }

    private static Schedule Schedule(Fields table)
    {
        var given = new[] { "every", "at", "per" }.Where(table.Has).ToList();
        if (given.Count != 1)
        {
            table.Wrong(given.LastOrDefault() ?? "every", given.Count == 0 ? "[[round]] does not say when it is due" : $"[[round]] has {string.Join(" and ", given)}", "one of every = \"1h\", at = [\"08:00\"], per = \"shift\" | \"day\" | \"week\"");
        }

        return given.FirstOrDefault() switch
        {
            "at" => new Schedule.At(Times(table)),
            "per" => new Schedule.Per(table.OneOf("per", ["shift", "day", "week"]) ?? "shift"),
            _ => new Schedule.Every(Interval(table)),
        };
    }

    private static TimeSpan Interval(Fields table)
    {
        var every = table.Duration("every") ?? TimeSpan.FromHours(1);
        if (every < TimeSpan.FromMinutes(5) || every > TimeSpan.FromHours(24))
        {
            table.Wrong("every", "every is too short or too long for a round", "5m to 24h; per = \"day\" | \"week\" for less often");
        }

        return every;
    }

    private static IReadOnlyList<TimeOnly> Times(Fields table)
    {
        var texts = table.Texts("at");
        if (texts.Count == 0)
        {
            table.Wrong("at", "at names no time", "as in [\"08:00\", \"16:00\"]");
        }

        var times = new List<TimeOnly>();
        foreach (var (text, place) in texts)
        {
            if (Reading.Times.Parse(text) is not { } time)
            {
                table.Keep<string>(null, new Mistake(place, $"'{text}' is no time of day", "as in \"08:00\""));
            }
            else
            {
                times.Add(time);
            }
        }

        return times;
    }

    private static IReadOnlyList<string> Points(Fields table, KnownPoints points)
    {
        var tags = table.Texts("points");
        if (tags.Count == 0)
        {
            table.Wrong("points", "[[round]] has no points", "points = [\"TAG\", ...] in walking order");
        }

        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (tag, place) in tags)
        {
            table.Keep<string>(null, seen.Add(tag) ? points.WhyNot(tag, place, PointKind.Read) : new Mistake(place, $"point '{tag}' comes twice in the round"));
        }

        return [.. tags.Select(t => t.Text)];
    }
}
