using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>One typed reading against its point: value, unit and time, with what was typed kept as it is.</summary>
internal static class ParseReading
{
    public static PointReading? Parse(Day day, TypedReading typed, DateTimeOffset entryAt, DateTimeOffset now, List<Mistake> mistakes)
    {
        var before = mistakes.Count;
        if (day.Site.FindPoint(typed.Point.Trim()) is not { } point)
        {
            string[] tags = [.. day.Site.Points.Where(p => p.Kind == PointKind.Read).Select(p => p.Tag)];
            mistakes.Add(new Mistake(typed.Place, $"'{typed.Point}' is not a point of this site", Given.Instead(typed.Point, tags, "the points stand in points.csv")));
            return null;
        }

        if (point.Kind == PointKind.Derived)
        {
            mistakes.Add(new Mistake(typed.Place, $"{point.Tag} is computed, not read", "give the readings that it is computed from"));
            return null;
        }

        foreach (var words in new[] { typed.Text, typed.Why, typed.Second, typed.Retyped, typed.Remark })
        {
            mistakes.AddRange(Given.NotTooLong(words, point.Tag + ": a text", typed.Place));
        }

        mistakes.AddRange(Given.NotInFuture(typed.At, point.Tag + ": the time of the reading", now, typed.Place));
        var at = Given.Instant(day.Site, typed.At ?? entryAt);
        var reading = typed.Text.Trim() is "-"
            ? NotTaken(day.Site, point, typed, at, mistakes)
            : Taken(day, point, typed, at, mistakes);
        return mistakes.Count == before ? reading : null;
    }

    private static PointReading? NotTaken(Site site, Point point, TypedReading typed, DateTimeOffset at, List<Mistake> mistakes)
    {
        if (Reason.Find(site.Reasons.NotTaken, typed.Why) is not { } why)
        {
            var wrong = string.IsNullOrWhiteSpace(typed.Why)
                ? $"{point.Tag} was not taken, but no reason is given"
                : $"'{typed.Why}' is no reason for {point.Tag} not being taken";
            mistakes.Add(new Mistake(typed.Place, wrong, "accepted: " + Reason.Offer(site.Reasons.NotTaken)));
            return null;
        }

        if (Reason.NeedsWords(why))
        {
            mistakes.Add(new Mistake(typed.Place, $"{point.Tag} was not taken: {Reason.WordsMissing}", $"{why.TrimEnd(':', ' ')}: and a few words"));
            return null;
        }

        return new PointReading(point, Base(point, typed, at) with { Why = why }, UnitGiven: false);
    }

    private static PointReading? Taken(Day day, Point point, TypedReading typed, DateTimeOffset at, List<Mistake> mistakes)
    {
        var parsed = Parse(point, typed.Text, typed.Unit, typed.Place, mistakes);
        if (typed.Second is { } second)
        {
            _ = Parse(point, second, null, typed.Place, mistakes);
        }

        if (parsed is not { } value)
        {
            return null;
        }

        var reading = Base(point, typed, at) with { Typed = WithUnit(typed), Value = value.Number, Why = Blank(typed.Why) };
        var judged = new PointReading(point, reading, value.UnitGiven);
        if (!Given.Says(reading.Why) && PossibleRange.Mistake(day, judged, typed.Place) is { } mistake)
        {
            mistakes.Add(mistake);
        }

        return judged;
    }

    private static (double Number, bool UnitGiven)? Parse(Point point, string text, string? unit, Place place, List<Mistake> mistakes) =>
        point.Choices.Count > 0 ? ParseChoice.Parse(point, text, unit, place, mistakes) : ParseQuantity.Parse(point.Tag, point.Unit, text, unit, place, mistakes);

    private static Reading Base(Point point, TypedReading typed, DateTimeOffset at) => new()
    {
        Point = point.Tag, Unit = point.Unit.Name, At = at, Second = Blank(typed.Second), Retyped = Blank(typed.Retyped), Remark = Blank(typed.Remark),
    };

    private static string WithUnit(TypedReading typed) => Blank(typed.Unit) is { } unit ? $"{typed.Text} {unit}" : typed.Text;

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;
}
