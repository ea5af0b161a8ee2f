using Logbook.Checks.Examining;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>A reading of an earlier entry put right, judged by the limits and inputs of that entry's day. Both values stay.</summary>
internal static class Correcting
{
    public static Written Correct(Desk desk, long target, TypedReading typed, string why, string by)
    {
        desk.Follow();
        if (desk.NotReady is { Count: > 0 } notReady)
        {
            return Written.Nothing(notReady);
        }

        if (desk.Store.Read(target).FirstOrDefault() is not { Body: Entry entry } record || record.Seq != target)
        {
            return Written.Nothing(Mistake.Typed($"record {target} is no entry", "give the seq of the entry that the reading stands in"));
        }

        var day = DayOf(desk, target);
        List<Mistake> mistakes = [.. Given.Writer(desk.Site, desk.State, by), .. Given.Text(why, "the reason for correcting")];
        var readings = Standing(desk, entry, target);
        var was = readings.FirstOrDefault(r => r.Point.Equals(typed.Point.Trim(), StringComparison.OrdinalIgnoreCase));
        var parsed = ParseReading.Parse(day, typed, was?.At ?? record.At, desk.Now, mistakes);
        if (parsed is not null)
        {
            mistakes.AddRange(Changes(parsed.Reading, was, entry));
        }

        return mistakes.Count > 0 ? Written.Nothing(mistakes) : Save(desk, day, record, readings, parsed!, why, by);
    }

    private static Written Save(Desk desk, Day day, JournalRecord record, IReadOnlyList<Reading> readings, PointReading right, string why, string by)
    {
        PointReading[] all = [.. readings.Select(r => r.Point.Equals(right.Point.Tag, StringComparison.OrdinalIgnoreCase)
            ? right
            : new PointReading(day.Site.FindPoint(r.Point)!, r, UnitGiven: false))];
        var (results, findings) = Judgement.Of(day, all, record.At);
        var examined = CrossExamined.Findings(day, new Sheet(Sheet.NotYet, record.At, [.. all.Select(r => r.Reading)], results, findings));
        var correction = new Correction(record.Seq, right.Reading, why.Trim(), results, examined);
        return Written.Saved(desk.Write(correction, desk.Now, desk.Site.FindPerson(by)!.Code));
    }

    private static IEnumerable<Mistake> Changes(Reading now, Reading? was, Entry entry) =>
        was is null ? Writing.Of($"entry has no reading of {now.Point}", "it has " + string.Join(", ", entry.Readings.Select(r => r.Point)))
        : now with { Typed = was.Typed } == was ? Writing.Of($"{now.Point} is already {was.Typed ?? was.Why}", "give the value as it should have been")
        : [];

    /// <summary>The entry's readings as earlier corrections left them.</summary>
    private static List<Reading> Standing(Desk desk, Entry entry, long target)
    {
        var readings = entry.Readings.ToList();
        foreach (var correction in desk.Store.Corrections(target, target).Select(r => (Correction)r.Body))
        {
            var index = readings.FindIndex(r => r.Point.Equals(correction.Reading.Point, StringComparison.OrdinalIgnoreCase));
            if (index >= 0)
            {
                readings[index] = correction.Reading;
            }
        }

        return readings;
    }

    /// <summary>The state as it was when the entry was judged, from the journal's own replay, with today's plug-ins.</summary>
    private static Day DayOf(Desk desk, long target)
    {
        var state = Replay.UpTo(desk.Store, target - 1);
        var site = state.Site ?? desk.Site;
        return new Day(site, state, desk.Store, CalculationGraph.Link(site, desk.Calculations), desk.Guard, target, Recent: null, new Examinations(desk.Store));
    }
}
