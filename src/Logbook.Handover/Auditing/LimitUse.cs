using System.Globalization;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Calendar = Logbook.Plant.Calendar;

namespace Logbook.Handover;

/// <summary>How often one limit of one point was exceeded.</summary>
/// <param name="Limit">urgent-low, watch-low, watch-high or urgent-high, with its value: <c>watch-high 102.6 degC</c>.</param>
/// <param name="Times">Times that it was left, each from its first reading beyond to the first one back.</param>
/// <param name="Hours">How long together, from reading to reading.</param>
/// <param name="Crews">Readings beyond it and all readings, by crew: <c>A 3/180</c>.</param>
public sealed record LimitRow(string Point, string Limit, int Readings, int Beyond, int Times, double Hours, IReadOnlyList<string> Crews);

/// <summary>What limits did over a stretch, and which checks were never made.</summary>
public static class LimitUse
{
    // Judgement, no source: fewer readings say nothing; beyond this share a limit is no news any more.
    private const int Enough = 100;
    private const double Always = 0.2;
    private const double MostlyNotTaken = 0.8;

    /// <summary>Every limit of every point that was read in [from, to), each judged by the limits in force at its time; limits that were changed are rows of their own.</summary>
    public static IReadOnlyList<LimitRow> Of(Desk desk, DateTimeOffset from, DateTimeOffset to) => [.. Rows(new AuditSpan(desk, from, to))];

    internal static IEnumerable<AuditFlag> Flags(AuditSpan span)
    {
        var shift = Calendar.ShiftAt(span.Desk.Site, span.From).Id;
        var safety = span.Desk.Site.Points.Where(p => p.Always).Select(p => p.Tag).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var rows in Rows(span).Where(r => r.Readings >= Enough).GroupBy(r => r.Point, StringComparer.OrdinalIgnoreCase))
        {
            AuditFlag Flag(string flag, string words) => new(flag, shift, span.From, null, rows.Key, $"{Say.Visible(rows.Key)}{words}", null);
            foreach (var row in rows.Where(r => r.Beyond > Always * r.Readings))
            {
                yield return Flag("limit-always", string.Create(CultureInfo.InvariantCulture, $", {row.Limit}: beyond it in {row.Beyond} of {row.Readings} readings"));
            }

            // A plant in order leaves few of its limits: one line for a point, however many it has. That a limit of a safety point
            // was never reached is what it is there for, and nothing to think over.
            if (!safety.Contains(rows.Key) && rows.Where(r => r.Beyond == 0).ToList() is { Count: > 0 } never)
            {
                yield return Flag("limit-never", string.Create(
                    CultureInfo.InvariantCulture, $": {Say.Count(never.Count, "limit")} never left in {never.Max(r => r.Readings)} readings: {string.Join(", ", never.Select(r => r.Limit))}"));
            }
        }

        foreach (var point in InSpan(span).SelectMany(e => e.Entry.Readings).GroupBy(r => r.Point, StringComparer.OrdinalIgnoreCase))
        {
            var (all, not) = (point.Count(), point.Count(r => r.NotTaken));
            if (all >= 10 && not > MostlyNotTaken * all)
            {
                yield return new AuditFlag("always-not-taken", shift, span.From, null, point.Key, $"{Say.Visible(point.Key)}: not taken in {not} of {all}; move the check, mend it or delete it", null);
            }
        }
    }

    private static IEnumerable<(JournalRecord Record, Entry Entry)> InSpan(AuditSpan span) => span.Entries.Where(e => e.Record.At >= span.From);

    internal static IEnumerable<LimitRow> Rows(AuditSpan span)
    {
        var sites = SiteInForce.Since(span.Desk, span.From);
        var series = InSpan(span).SelectMany(e => Values(e.Record, e.Entry)).GroupBy(v => v.Point, StringComparer.OrdinalIgnoreCase);
        // Years of every point: each stands for itself, on all cores.
        return series.AsParallel().AsOrdered().SelectMany(values => Rows(values.Key, sites, values.OrderBy(v => v.At)));
    }

    private static IEnumerable<Seen> Values(JournalRecord record, Entry entry)
    {
        var crew = record.Shift[(record.Shift.LastIndexOf('-') + 1)..];
        return entry.Readings.Where(r => r.Value is not null).Select(r => new Seen(r.Point, r.At, r.Value!.Value, crew))
            .Concat(entry.Results.Where(r => r.Point is not null).Select(r => new Seen(r.Point!, record.At, r.Value, crew)));
    }

    private static IEnumerable<LimitRow> Rows(string tag, IReadOnlyList<SiteInForce> sites, IEnumerable<Seen> values)
    {
        var tallies = new Dictionary<Limit, Tally>();
        var inForce = new Dictionary<Point, Tally[]>(ReferenceEqualityComparer.Instance); // found once, not for each value
        foreach (var value in values)
        {
            if (sites.Last(s => s.From <= value.At).Site.FindPoint(tag) is not { Choices.Count: 0 } point)
            {
                continue;
            }

            if (!inForce.TryGetValue(point, out var present))
            {
                inForce[point] = present = [.. Limits(point).Select(l => tallies.TryGetValue(l, out var known) ? known : tallies[l] = new Tally(l))];
            }

            foreach (var tally in tallies.Values)
            {
                tally.Add(value, present.Contains(tally));
            }
        }

        return tallies.Values.Select(t => t.Row(tag)).OrderBy(r => r.Order).Select(r => r.Row);
    }

    private static IReadOnlyList<Limit> Limits(Point point)
    {
        (string Name, double? At, bool Low)[] all =
        [
            ("urgent-low", point.Limits.UrgentLow, true), ("watch-low", point.Limits.WatchLow, true),
            ("watch-high", point.Limits.WatchHigh, false), ("urgent-high", point.Limits.UrgentHigh, false),
        ];
        return [.. all.Select((l, i) => l.At is { } at ? new Limit(i, $"{l.Name} {Say.Value(point, at, point.Unit.Name)}", at, l.Low) : null).OfType<Limit>()];
    }

    private sealed record Limit(int Order, string Words, double At, bool Low);

    private readonly record struct Seen(string Point, DateTimeOffset At, double Value, string Crew);

    /// <summary>What one limit did, reading by reading in time order.</summary>
    private sealed class Tally(Limit limit)
    {
        private readonly SortedDictionary<string, (int Beyond, int All)> _crews = new(StringComparer.Ordinal);
        private int _times;
        private double _hours;
        private DateTimeOffset? _beyondAt;

        /// <param name="inForce">A reading under another limit is on neither side of this one.</param>
        public void Add(in Seen value, bool inForce)
        {
            _hours += _beyondAt is { } before ? (value.At - before).TotalHours : 0;
            var beyond = inForce && (limit.Low ? value.Value < limit.At : value.Value > limit.At);
            _times += beyond && _beyondAt is null ? 1 : 0;
            _beyondAt = beyond ? value.At : null;
            if (inForce)
            {
                var crew = _crews.GetValueOrDefault(value.Crew);
                _crews[value.Crew] = (crew.Beyond + (beyond ? 1 : 0), crew.All + 1);
            }
        }

        public (int Order, LimitRow Row) Row(string point) => (limit.Order, new LimitRow(
            point, limit.Words, _crews.Values.Sum(c => c.All), _crews.Values.Sum(c => c.Beyond), _times, Math.Round(_hours, 1), [.. _crews.Select(c => $"{c.Key} {c.Value.Beyond}/{c.Value.All}")]));
    }
}
