using Logbook.Checks.Examining;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>The way of an entry: from typed text to a record on the disk.</summary>
public static class RecordEntry
{
    /// <summary>Judges and saves.</summary>
    /// <exception cref="JournalException">The store could not save it; nothing was saved.</exception>
    public static Written Run(Desk desk, EntryRequest request)
    {
        desk.Follow();
        var judged = Judge(desk, request);
        if (!judged.Ok)
        {
            return Written.Nothing(judged.Mistakes);
        }

        // What is saved is also held against the entries before it; what is imported was lived through long ago.
        var (entry, at) = (judged.Value!, EntryTime(desk, request, judged.Value!.Readings));
        var examined = entry.Imported is null ? AgainstThePast(Day.Today(desk), entry, at) : entry;
        return Written.Saved(desk.Write(examined, at, desk.Site.FindPerson(request.By)!.Code));
    }

    /// <summary>Is there a reading that cannot be right beside the others, and has a point slowly moved away.</summary>
    private static Entry AgainstThePast(Day day, Entry entry, DateTimeOffset at)
    {
        var sheet = Sheet.Of(Sheet.NotYet, at, entry);
        var examined = entry with { Findings = CrossExamined.Findings(day, sheet) };
        return examined with { Findings = CreepCheck.Findings(day, examined, CrossExamined.Silent(day, sheet)) };
    }

    /// <summary>Judges without saving: what the screen shows while a person types.</summary>
    public static Parsed<Entry> Judge(Desk desk, EntryRequest request)
    {
        if (desk.NotReady is { Count: > 0 } notReady)
        {
            return new Parsed<Entry>(null, notReady);
        }

        // Typed text is parsed against the points; every mistake is said at once, and with one nothing goes on.
        var mistakes = new List<Mistake>();
        var day = Day.Today(desk) with { SecondOf = request.SecondOf };
        var readings = ParseEntry.Parse(day, request, desk.Now, mistakes);
        if (mistakes.Count > 0)
        {
            return new Parsed<Entry>(null, mistakes);
        }

        // Then the checks of each reading, the calculations whose inputs changed, and what both have to say.
        Reading[] values = [.. readings.Select(r => r.Reading)];
        var (results, findings) = Judgement.Of(day, readings, EntryTime(desk, request, values));
        return new Parsed<Entry>(
            new Entry
            {
                Round = request.Round is { } round ? day.Site.FindRound(round)!.Id : null,
                WalkStart = Instant(day, request.WalkStart),
                WalkEnd = Instant(day, request.WalkEnd),
                Imported = request.Imported,
                SecondOf = request.SecondOf,
                Remark = string.IsNullOrWhiteSpace(request.Remark) ? null : request.Remark,
                Readings = values,
                Results = results,
                Findings = findings,
            },
            []);
    }

    private static DateTimeOffset? Instant(Day day, DateTimeOffset? at) => at is { } known ? Given.Instant(day.Site, known) : null;

    /// <summary>An entry happened when its last reading was taken.</summary>
    private static DateTimeOffset EntryTime(Desk desk, EntryRequest request, IReadOnlyList<Reading> readings) =>
        readings.Count > 0 ? readings.Max(r => r.At) : request.At ?? request.WalkEnd ?? desk.Now;
}
