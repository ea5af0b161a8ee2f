namespace Logbook.Plant;

/// <summary>One shift of one day. Covers its start, not its end.</summary>
/// <param name="Id">Start date, code, crew: <c>2026-10-31-N-B</c>.</param>
public sealed record ShiftInstance(string Id, string Code, string Crew, DateOnly Date, DateTimeOffset Start, DateTimeOffset End);

/// <summary>One time at which a round is due, and the window in which it counts.</summary>
public sealed record Slot(DateTimeOffset DueAt, DateTimeOffset Opens, DateTimeOffset Closes, ShiftInstance Shift)
{
    /// <summary>Tags that are due: the round's, or near a shift change its safety points alone.</summary>
    public required IReadOnlyList<string> Points { get; init; }
}

/// <summary>Shifts and due times. Boundaries are wall-clock times of the site, converted per day.</summary>
public static class Calendar
{
    /// <summary>The same instant with the site's offset.</summary>
    public static DateTimeOffset ToSite(Site site, DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, site.Zone);

    /// <summary>The instant of a wall-clock time: a missing one moves to the next valid instant, a repeated one means the first.</summary>
    public static DateTimeOffset AtSite(Site site, DateTime local)
    {
        var offsets = WallClock.Offsets(site.Zone, local);
        while (offsets.Count == 0)
        {
            local = new DateTime(local.Ticks - (local.Ticks % TimeSpan.TicksPerMinute)).AddMinutes(1);
            offsets = WallClock.Offsets(site.Zone, local);
        }

        return new DateTimeOffset(local, offsets[0]);
    }

    /// <summary>The shift that covers <paramref name="instant"/>.</summary>
    public static ShiftInstance ShiftAt(Site site, DateTimeOffset instant) => Shifts(site, instant, instant.AddTicks(1)).Single();

    /// <summary>Every shift that has a part in [from, to), in order.</summary>
    public static IEnumerable<ShiftInstance> Shifts(Site site, DateTimeOffset from, DateTimeOffset to)
    {
        (DateOnly Date, string Code, DateTimeOffset At)? last = null;
        foreach (var next in Starts(site, from, to))
        {
            // Two starts at one instant (the first fell into the missing hour) leave nothing for the first.
            if (last is { } shift && shift.At < next.At)
            {
                if (next.At > from && shift.At < to)
                {
                    yield return Instance(site, shift, next.At);
                }
            }

            last = next;
        }
    }

    /// <summary>Every slot of the round that is due in [from, to), in order.</summary>
    public static IEnumerable<Slot> Slots(Site site, Round round, DateTimeOffset from, DateTimeOffset to) =>
        RoundSlots.All(site, round, from, to);

    private static IEnumerable<(DateOnly Date, string Code, DateTimeOffset At)> Starts(Site site, DateTimeOffset from, DateTimeOffset to)
    {
        foreach (var date in Dates(site, from, to))
        {
            foreach (var shift in site.Shifts.OrderBy(s => s.Starts))
            {
                yield return (date, shift.Code, AtSite(site, date.ToDateTime(shift.Starts)));
            }
        }
    }

    /// <summary>The site's dates from the one before <paramref name="from"/> to the one after <paramref name="to"/>.</summary>
    internal static IEnumerable<DateOnly> Dates(Site site, DateTimeOffset from, DateTimeOffset to)
    {
        var last = NextDate(site, DateOnly.FromDateTime(ToSite(site, to).Date), 1);
        for (var date = NextDate(site, DateOnly.FromDateTime(ToSite(site, from).Date), -1); date <= last; date = NextDate(site, date, 1))
        {
            yield return date;
        }
    }

    private static DateOnly NextDate(Site site, DateOnly date, int step) =>
        Exists(site, date.AddDays(step)) ? date.AddDays(step) : NextDate(site, date.AddDays(step), step);

    /// <summary>False for a date that the clock was put forward over as a whole, as Samoa's was over 30 December 2011.</summary>
    internal static bool Exists(Site site, DateOnly date) => DateOnly.FromDateTime(AtSite(site, date.ToDateTime(TimeOnly.MinValue)).DateTime) == date;

    private static ShiftInstance Instance(Site site, (DateOnly Date, string Code, DateTimeOffset At) shift, DateTimeOffset end)
    {
        var crew = site.Crews.On(shift.Date, shift.Code).FirstOrDefault() ?? "-";
        return new ShiftInstance($"{shift.Date:yyyy-MM-dd}-{shift.Code}-{crew}", shift.Code, crew, shift.Date, shift.At, ToSite(site, end));
    }
}
