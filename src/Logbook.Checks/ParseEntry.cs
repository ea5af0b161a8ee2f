using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A reading beside the point that it was parsed against.</summary>
/// <param name="UnitGiven">The person typed the unit, so that it was hardly mistaken.</param>
internal sealed record PointReading(Point Point, Reading Reading, bool UnitGiven)
{
    /// <summary>A number that can be compared and computed with.</summary>
    public double? Number => Point.Choices.Count == 0 ? Reading.Value : null;
}

/// <summary>From the request to readings, or every mistake in it at once.</summary>
internal static class ParseEntry
{
    public static IReadOnlyList<PointReading> Parse(Day day, EntryRequest request, DateTimeOffset now, List<Mistake> mistakes)
    {
        CheckHeader(day, request, now, mistakes);
        var at = Given.Instant(day.Site, request.At ?? request.WalkEnd ?? now);
        var readings = new List<PointReading>();
        foreach (var typed in request.Readings)
        {
            if (ParseReading.Parse(day, typed, at, now, mistakes) is { } reading)
            {
                readings.Add(reading);
            }
        }

        if (request.Round is not null && day.Site.FindRound(request.Round) is { } round)
        {
            mistakes.AddRange(readings.Where(r => !round.Points.Contains(r.Point.Tag, StringComparer.OrdinalIgnoreCase)).Select(r => NotInRound(day.Site, round, r.Point, request)));
        }

        foreach (var twice in request.Readings.GroupBy(r => r.Point, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
        {
            mistakes.Add(new Mistake(twice.Last().Place, $"{twice.Key} is given {twice.Count()} times in one entry", "give it once; a second reading goes beside the first"));
        }

        return readings;
    }

    /// <summary>A reading answers a check of the round that it is typed for, so it must be one of its points.</summary>
    private static Mistake NotInRound(Site site, Round round, Point point, EntryRequest request)
    {
        string[] others = [.. site.Rounds.Where(r => r.Points.Contains(point.Tag, StringComparer.OrdinalIgnoreCase)).Select(r => r.Id)];
        return new Mistake(
            request.Readings.First(r => r.Point.Trim().Equals(point.Tag, StringComparison.OrdinalIgnoreCase)).Place,
            $"{point.Tag} is not in the round {round.Id}", others.Length == 0 ? "in no round: save it without one" : $"in: {string.Join(", ", others)}; or save it without a round");
    }

    private static void CheckHeader(Day day, EntryRequest request, DateTimeOffset now, List<Mistake> mistakes)
    {
        var site = day.Site;
        mistakes.AddRange(Given.Writer(site, day.State, request.By));
        if (request.Round is { } round && site.FindRound(round) is null)
        {
            string[] known = [.. site.Rounds.Select(r => r.Id)];
            mistakes.Add(Mistake.Typed($"'{round}' is not a round of this site", Given.Instead(round, known, "the rounds stand in site.toml")));
        }

        if (request.Readings.Count == 0 && string.IsNullOrWhiteSpace(request.Remark))
        {
            mistakes.Add(Mistake.Typed("nothing to save", "give at least one POINT=VALUE or a remark"));
        }

        if (request.SecondOf is { } first && (first < 1 || first > day.State.Head.Seq))
        {
            mistakes.Add(Mistake.Typed($"there is no record {first} to take a second reading of", $"1 to {day.State.Head.Seq}"));
        }

        mistakes.AddRange(Given.NotTooLong(request.Remark, "the remark", Place.Unknown));
        mistakes.AddRange(Given.NotInFuture(request.At, "the time of the entry", now, Place.Unknown));
        mistakes.AddRange(Given.NotInFuture(request.WalkStart, "the start of the walk", now, Place.Unknown));
        mistakes.AddRange(Given.NotInFuture(request.WalkEnd, "the end of the walk", now, Place.Unknown));
        if (request.WalkStart > request.WalkEnd)
        {
            mistakes.Add(Mistake.Typed($"the walk ends {Words.Time(request.WalkEnd.Value)}, before it starts {Words.Time(request.WalkStart.Value)}", "start first, then end"));
        }
    }
}
