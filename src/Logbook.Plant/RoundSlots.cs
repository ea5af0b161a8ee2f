namespace Logbook.Plant;

/// <summary>When a round falls due.</summary>
internal static class RoundSlots
{
    public static IEnumerable<Slot> All(Site site, Round round, DateTimeOffset from, DateTimeOffset to)
    {
        var due = round.Schedule switch
        {
            Schedule.Every every => Elapsed(site, round, every.Interval, from, to),
            Schedule.At at => WallClock(site, round, at.Times, from, to),
            Schedule.Per per => Once(site, round, per.Period, from, to),
            _ => throw new InvalidOperationException($"no such schedule: {round.Schedule}"),
        };
        return due.Where(s => from <= s.DueAt && s.DueAt < to).Select(s => KeptClear(site, s)).Where(s => s.Points.Count > 0);
    }

    private static IEnumerable<Slot> Elapsed(Site site, Round round, TimeSpan interval, DateTimeOffset from, DateTimeOffset to)
    {
        foreach (var shift in Calendar.Shifts(site, from, to))
        {
            for (var due = shift.Start; due < shift.End; due += interval)
            {
                yield return Around(round, Calendar.ToSite(site, due), shift);
            }
        }
    }

    private static IEnumerable<Slot> WallClock(Site site, Round round, IReadOnlyList<TimeOnly> times, DateTimeOffset from, DateTimeOffset to)
    {
        var due = Calendar.Dates(site, from, to).SelectMany(day => times.Order().Select(time => Calendar.AtSite(site, day.ToDateTime(time))));
        return due.Distinct().Where(d => from <= d && d < to).Select(d => Around(round, d, Calendar.ShiftAt(site, d)));
    }

    /// <summary>Due shortly before the period's end, clear of the shift change, so that it belongs to the period's last shift; open from its start.</summary>
    private static IEnumerable<Slot> Once(Site site, Round round, string period, DateTimeOffset from, DateTimeOffset to)
    {
        var periods = period == "shift"
            ? Calendar.Shifts(site, from, to + round.Late).Select(s => (s.Start, s.End))
            : Calendar.Dates(site, from, to + round.Late)
                .Select(day => period == "week" ? Monday(day) : day)
                .Distinct()
                .Select(day => (DayStart(site, day), DayStart(site, day.AddDays(period == "week" ? 7 : 1))));
        foreach (var (start, end) in periods)
        {
            var before = round.Late > site.KeepClear ? round.Late : site.KeepClear;
            var due = Calendar.ToSite(site, end - before < start ? start : end - before);
            yield return new Slot(due, start, end, Calendar.ShiftAt(site, due)) { Points = round.Points };
        }
    }

    private static DateOnly Monday(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));

    /// <summary>The plant's day starts with its first shift, not at midnight.</summary>
    private static DateTimeOffset DayStart(Site site, DateOnly day) => Calendar.Exists(site, day)
        ? Calendar.AtSite(site, day.ToDateTime(site.Shifts.Min(s => s.Starts)))
        : DayStart(site, day.AddDays(1));

    private static Slot Around(Round round, DateTimeOffset due, ShiftInstance shift) =>
        new(due, due - round.Early, due + round.Late, shift) { Points = round.Points };

    private static Slot KeptClear(Site site, Slot slot)
    {
        var toChange = Min(slot.DueAt - slot.Shift.Start, slot.Shift.End - slot.DueAt);
        return toChange >= site.KeepClear ? slot : slot with { Points = [.. slot.Points.Where(t => site.FindPoint(t) is { Always: true })] };
    }

    private static TimeSpan Min(TimeSpan a, TimeSpan b) => a < b ? a : b;
}
