using Logbook.Checks.Examining;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>
/// Readings of an earlier entry put right or taken back, judged together by the limits and inputs of that entry's day: what
/// was swapped never stands half put right. What was typed first stays in its record.
/// </summary>
internal static class Correcting
{
    public static Written Correct(Desk desk, long target, IReadOnlyList<TypedReading> typed, string why, string by)
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
        List<Mistake> mistakes = [.. Given.Writer(desk.Site, desk.State, by), .. Given.Text(why, "the reason for correcting"), .. Twice(typed)];
        var standing = Standing(desk, entry, target);
        var right = new List<PointReading>();
        foreach (var one in typed)
        {
            var was = standing.FirstOrDefault(r => r.Point.Equals(one.Point.Trim(), StringComparison.OrdinalIgnoreCase));
            if (Parse(day, one, was, record, desk.Now, why, mistakes) is { } parsed)
            {
                mistakes.AddRange(Changes(parsed.Reading, was, entry));
                right.Add(parsed);
            }
        }

        return mistakes.Count > 0 ? Written.Nothing(mistakes) : Save(desk, day, record, standing, right, why.Trim(), by);
    }

    private static IEnumerable<Mistake> Twice(IReadOnlyList<TypedReading> typed) => typed.Count == 0
        ? Writing.Of("no reading is given", "POINT=VALUE as it should have been, or POINT=- to take it back")
        : typed.GroupBy(t => t.Point.Trim(), StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1).Select(g => Mistake.Typed($"{g.Key} is given {g.Count()} times", "each point once"));

    /// <summary>A value that is taken back was not taken; the reason is the correction's own, not one of the site's list for a walk.</summary>
    private static PointReading? Parse(Day day, TypedReading typed, Reading? was, JournalRecord record, DateTimeOffset now, string why, List<Mistake> mistakes)
    {
        if (typed.Text.Trim() is not "-" || typed.Why is not null || was is null || day.Site.FindPoint(was.Point) is not { } point)
        {
            return ParseReading.Parse(day, typed, was?.At ?? record.At, now, mistakes);
        }

        return new PointReading(point, new Reading { Point = point.Tag, Unit = point.Unit.Name, At = was.At, Why = TakenBack + why.Trim() }, UnitGiven: false);
    }

    private const string TakenBack = "taken back: ";

    private static Written Save(Desk desk, Day day, JournalRecord record, IReadOnlyList<Reading> standing, List<PointReading> right, string why, string by)
    {
        PointReading[] all = [.. standing.Select(r => right.Find(p => p.Point.Tag.Equals(r.Point, StringComparison.OrdinalIgnoreCase))
            ?? new PointReading(day.Site.FindPoint(r.Point)!, r, UnitGiven: false))];
        var (results, findings) = Judgement.Of(day, all, record.At);
        var examined = CrossExamined.Findings(day, new Sheet(Sheet.NotYet, record.At, [.. all.Select(r => r.Reading)], results, findings));
        IReadOnlyList<Finding> found = [.. examined, .. right.Where(r => r.Reading.NotTaken).SelectMany(r => StandAgain(day, r.Reading))];
        found = [.. found, .. UrgentBefore.Of(desk, day.Site, record, right, found, why, by)];
        var correction = Correction.Of(record.Seq, [.. right.Select(r => r.Reading)], why, results, found) with { Answered = Answered(desk, record, found) };
        return Written.Saved(desk.Write(correction, desk.Now, desk.Site.FindPerson(by)!.Code));
    }

    /// <summary>What was urgent before this correction, is so still, and waits for no answer any more had one: it is not asked for again.</summary>
    private static IReadOnlyList<int>? Answered(Desk desk, JournalRecord record, IReadOnlyList<Finding> findings)
    {
        var before = desk.Store.Corrections(record.Seq, record.Seq).LastOrDefault()?.Body is Correction last ? last.Findings : ((Entry)record.Body).Findings;
        static bool Same(Finding one, Finding other) => one.Point == other.Point && one.Code == other.Code;
        List<int> answered = [.. findings.Index()
            .Where(f => f.Item.Level == Level.Urgent && before.Any(b => Same(b, f.Item)) && !desk.State.Unanswered.Exists(open => Same(open.Finding, f.Item))).Select(f => f.Index + 1)];
        return answered.Count == 0 ? null : answered;
    }

    /// <summary>What the value before had been found to be: the value that is taken back had cleared it, and must not have.</summary>
    private static IEnumerable<Finding> StandAgain(Day day, Reading takenBack) =>
        (day.State.Findings.GetValueOrDefault(takenBack.Point) ?? []).Select(f => f.Finding with
        {
            Text = $"{f.Finding.Text} (read {Words.Time(Calendar.ToSite(day.Site, f.At))}, record {f.Seq}; the later value was taken back)", Again = true,
        });

    private static IEnumerable<Mistake> Changes(Reading now, Reading? was, Entry entry) =>
        was is null ? Writing.Of($"entry has no reading of {now.Point}", "it has " + string.Join(", ", entry.Readings.Select(r => r.Point)))
        : now.NotTaken && was.NotTaken ? Writing.Of($"{now.Point} was not taken: there is no value to take back", "give the value as it should have been")
        : now.Value == was.Value && now.Unit == was.Unit && now.Why == was.Why && now.At == was.At ? Writing.Of($"{now.Point} is already {was.Typed ?? was.Why}", "give the value as it should have been")
        : [];

    /// <summary>The entry's readings as earlier corrections left them.</summary>
    private static IReadOnlyList<Reading> Standing(Desk desk, Entry entry, long target) =>
        desk.Store.Corrections(target, target).Select(r => (Correction)r.Body).Aggregate(entry.Readings, (readings, correction) => correction.PutInto(readings));

    // So many records before the entry: what was put right before that is stale by now.
    private const int Near = 512;

    /// <summary>
    /// The state as it was when the entry was judged, from the journal's own replay, with today's plug-ins; what was put right
    /// since of entries before it stands as it is right: a round that was typed one field too far is put right piece by piece.
    /// </summary>
    private static Day DayOf(Desk desk, long target)
    {
        var state = desk.Store.Corrections(target - Near, target - 1).Where(c => c.Seq > target).OrderBy(c => c.Seq).Aggregate(Replay.UpTo(desk.Store, target - 1), (then, correction) => then.Apply(correction));
        var site = state.Site ?? desk.Site;
        return new Day(site, state, desk.Store, CalculationGraph.Link(site, desk.Calculations), desk.Guard, target, Recent: null, new Examinations(desk.Store));
    }
}
