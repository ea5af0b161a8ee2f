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
        var limits = new Dictionary<Point, IReadOnlyList<Limit>>(ReferenceEqualityComparer.Instance); // in words once, not for each value
        IReadOnlyList<Limit> LimitsOf(Point point) => limits.TryGetValue(point, out var known) ? known : limits[point] = Limits(point);
        var series = InSpan(span)
            .SelectMany(e => e.Entry.Readings.Where(r => r.Value is not null).Select(r => (r.Point, r.At, Value: r.Value!.Value, e.Record.Shift))
                .Concat(e.Entry.Results.Where(r => r.Point is not null).Select(r => (Point: r.Point!, e.Record.At, r.Value, e.Record.Shift))))
            .GroupBy(v => v.Point, StringComparer.OrdinalIgnoreCase);
        foreach (var values in series)
        {
            var seen = (from value in values
                        let point = sites.Last(s => s.From <= value.At).Site.FindPoint(values.Key)
                        where point is { Choices.Count: 0 }
                        orderby value.At
                        select new Judged(value.At, value.Value, value.Shift[(value.Shift.LastIndexOf('-') + 1)..], LimitsOf(point))).ToList();
            foreach (var limit in seen.SelectMany(v => v.Limits).Distinct().OrderBy(l => l.Order))
            {
                yield return Row(values.Key, limit, seen);
            }
        }
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

    private static LimitRow Row(string point, Limit limit, List<Judged> all)
    {
        // A reading under another limit is on neither side of this one.
        bool IsBeyond(Judged value) => value.Limits.Contains(limit) && (limit.Low ? value.Value < limit.At : value.Value > limit.At);
        var (times, hours) = (0, 0.0);
        for (var i = 0; i < all.Count; i++)
        {
            if (IsBeyond(all[i]))
            {
                times += i == 0 || !IsBeyond(all[i - 1]) ? 1 : 0;
                hours += i + 1 < all.Count ? (all[i + 1].At - all[i].At).TotalHours : 0;
            }
        }

        var under = all.FindAll(v => v.Limits.Contains(limit));
        return new LimitRow(
            point, limit.Words, under.Count, under.Count(IsBeyond), times, Math.Round(hours, 1),
            [.. under.GroupBy(v => v.Crew, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Count(IsBeyond)}/{g.Count()}")]);
    }

    private sealed record Limit(int Order, string Words, double At, bool Low);

    /// <summary>A value beside the limits of its time.</summary>
    private sealed record Judged(DateTimeOffset At, double Value, string Crew, IReadOnlyList<Limit> Limits);
}
