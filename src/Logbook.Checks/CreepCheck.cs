using Logbook.Checks.Charts;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>
/// A point that has slowly left the place where it lay for two weeks: a note, told once, which stands until the point is back. It
/// is looked for, and put in words anew, at the first reading of each shift: what takes days is not missed for hours, and other
/// saves pay nothing for it.
/// Nothing of it is told beside something urgent, nor of a point of which the entry says more already.
/// </summary>
internal static class CreepCheck
{
    public const string Code = "drift";

    private static readonly TimeSpan Memory = TimeSpan.FromDays(14);

    /// <summary>The entry's findings with what it adds, behind all others of its level.</summary>
    public static IReadOnlyList<Finding> Findings(Day day, Entry entry, bool silent)
    {
        var found = entry.SecondOf is null ? entry.Readings.Where(r => r.Value is not null).Select(r => Of(day, entry, r, silent)).OfType<Found>().ToList() : [];
        if (found.Count == 0)
        {
            return entry.Findings;
        }

        // What begins together has one cause: one is told, and names the others.
        var begun = found.Where(f => f.Begins).OrderByDescending(f => f.Creep!.Times).ToList();
        var told = begun.Take(1).Select(f => Tell(f, begun.Skip(1)));
        var kept = found.Except(begun).Select(f => f.Creep is null ? f.Standing! : Tell(f, [])).Concat(begun.Skip(1).Select(f => Tell(f, [])));
        return [.. entry.Findings.Concat(told).Concat(kept.Select(f => f with { Again = true })).OrderByDescending(f => f.Level)];
    }

    /// <param name="Standing">What was told before; null when it begins here.</param>
    private sealed record Found(Point Point, Creep? Creep, List<SeriesValue> Series, Finding? Standing)
    {
        public bool Begins => Standing is null;
    }

    private static Found? Of(Day day, Entry entry, Reading reading, bool silent)
    {
        if (day.Site.FindPoint(reading.Point) is not { Choices.Count: 0 } point || !day.AtWork(point.Equipment, reading.At))
        {
            return null;
        }

        var standing = day.State.Findings.GetValueOrDefault(point.Tag)?.Find(f => f.Finding.Code == Code)?.Finding;
        var begins = standing is null;
        if (begins && (silent || entry.Findings.Any(f => Speaks(f, point))))
        {
            return null;
        }

        if (!FirstOfShift(day, point, reading.At))
        {
            return begins ? null : new Found(point, null, [], standing);
        }

        var series = Series(day, point, reading);
        var resolution = point.Resolution ?? Math.Pow(10, -point.Decimals);
        var creep = Creep.Of([.. series.Select(v => (v.At - series[0].At).TotalHours)], [.. series.Select(v => v.Value!.Value)], resolution);
        return creep?.Stands(2 * (point.U?.Of(creep.Usual) ?? resolution), !begins) == true ? new Found(point, creep, series, standing) : null;
    }

    private static bool Speaks(Finding finding, Point point) => finding.Point == point.Tag || finding.Text.Contains($"({point.Tag})", StringComparison.Ordinal);

    private static bool FirstOfShift(Day day, Point point, DateTimeOffset at) =>
        day.LastCompared(point, at) is { } last && last.At < Calendar.ShiftAt(day.Site, at).Start;

    /// <summary>The point's readings since its equipment runs as it does and the site's files hold as they do, this one last.</summary>
    private static List<SeriesValue> Series(Day day, Point point, Reading reading)
    {
        var from = reading.At - Memory;
        foreach (var since in new[] { day.State.SiteSince, point.Equipment is { } code ? day.State.Equipment.GetValueOrDefault(code)?.Since : null })
        {
            from = since > from ? since.Value : from;
        }

        var before = day.Compared(point, from, reading.At).Where(v => v.At < reading.At);
        return [.. before, new SeriesValue(point.Tag, reading.At, reading.Value, reading.Typed, reading.Unit, null, null, "", 0, null)];
    }

    /// <summary>What is there already is not forecast.</summary>
    private static bool Beyond(Point point, double value) => value < point.Limits.WatchLow || value > point.Limits.WatchHigh;

    private static Finding Tell(Found found, IEnumerable<Found> others)
    {
        var (point, creep) = (found.Point, found.Creep!);
        var with = Words.And([.. others.Select(o => o.Point.Tag)]);
        var since = Trend.Of(point, found.Series.Skip(creep.Since));
        return new Finding(Level.Note, Code, point.Tag,
            $"{point.Description} ({point.Tag}) has moved slowly {(creep.Away > 0 ? "up" : "down")}: about {Words.Value(point, creep.Now)} over the last {Words.Number(Creep.NewestHours)} h, usually {Words.Value(point, creep.Usual)}; "
            + $"away from the usual since {Words.Time(found.Series[creep.Since].At)}{(with.Length == 0 ? "" : $", and with it {with}")}. "
            + (TrendWords.HasLimitInSight(since) && !Beyond(point, found.Series[^1].Value!.Value) ? $"Since then {since.Heading}. " : "") + "The plant was moved, or the instrument drifts",
            [
                $"usual from {creep.Readings} readings since {Words.Time(found.Series[0].At)}, without the last {Words.Number(Creep.NewestHours)} h",
                .. since.Heading.Length > 0 ? [$"{since.N} readings since then: {since.Heading}"] : Array.Empty<string>(),
                $"95 of 100 averages of those days lay within {Words.Difference(point, creep.Reach)} of it; this one is {Words.Difference(point, Math.Abs(creep.Away))} away",
            ]);
    }
}
