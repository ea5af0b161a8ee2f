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

    /// <summary>Every limit of every point that was read in [from, to), judged by the limits in force now.</summary>
    public static IReadOnlyList<LimitRow> Of(Desk desk, DateTimeOffset from, DateTimeOffset to) => [.. Rows(new AuditSpan(desk, from, to))];

    internal static IEnumerable<AuditFlag> Flags(AuditSpan span)
    {
        var shift = Calendar.ShiftAt(span.Desk.Site, span.From).Id;
        foreach (var row in Rows(span).Where(r => r.Readings >= Enough))
        {
            var flag = row.Beyond == 0 ? "limit-never" : row.Beyond > Always * row.Readings ? "limit-always" : null;
            if (flag is not null)
            {
                yield return new AuditFlag(
                    flag, shift, span.From, null, row.Point,
                    string.Create(CultureInfo.InvariantCulture, $"{Say.Visible(row.Point)}, {row.Limit}: beyond it in {row.Beyond} of {row.Readings} readings"), null);
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
        var site = span.Desk.Site;
        var series = InSpan(span)
            .SelectMany(e => e.Entry.Readings.Where(r => r.Value is not null).Select(r => (r.Point, r.At, Value: r.Value!.Value, e.Record.Shift))
                .Concat(e.Entry.Results.Where(r => r.Point is not null).Select(r => (Point: r.Point!, e.Record.At, r.Value, e.Record.Shift))))
            .GroupBy(v => v.Point, StringComparer.OrdinalIgnoreCase);
        foreach (var values in series)
        {
            if (site.FindPoint(values.Key) is not { Choices.Count: 0 } point)
            {
                continue;
            }

            var seen = values.Select(v => (v.At, v.Value, Crew: v.Shift[(v.Shift.LastIndexOf('-') + 1)..])).OrderBy(v => v.At).ToList();
            foreach (var (name, limit, low) in Limits(point))
            {
                yield return Row(point, $"{name} {Say.Value(point, limit, point.Unit.Name)}", seen, value => low ? value < limit : value > limit);
            }
        }
    }

    private static IEnumerable<(string Name, double Limit, bool Low)> Limits(Point point)
    {
        (string, double?, bool)[] all =
        [
            ("urgent-low", point.Limits.UrgentLow, true), ("watch-low", point.Limits.WatchLow, true),
            ("watch-high", point.Limits.WatchHigh, false), ("urgent-high", point.Limits.UrgentHigh, false),
        ];
        return all.Where(l => l.Item2 is not null).Select(l => (l.Item1, l.Item2!.Value, l.Item3));
    }

    private static LimitRow Row(Point point, string limit, List<(DateTimeOffset At, double Value, string Crew)> seen, Func<double, bool> isBeyond)
    {
        var (times, hours) = (0, 0.0);
        for (var i = 0; i < seen.Count; i++)
        {
            if (isBeyond(seen[i].Value))
            {
                times += i == 0 || !isBeyond(seen[i - 1].Value) ? 1 : 0;
                hours += i + 1 < seen.Count ? (seen[i + 1].At - seen[i].At).TotalHours : 0;
            }
        }

        return new LimitRow(
            point.Tag, limit, seen.Count, seen.Count(v => isBeyond(v.Value)), times, Math.Round(hours, 1),
            [.. seen.GroupBy(v => v.Crew, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Count(v => isBeyond(v.Value))}/{g.Count()}")]);
    }
}
