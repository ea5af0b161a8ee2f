namespace Logbook.Plant;

/// <summary>One shift of one day. Covers its start, not its end.</summary>
/// <param name="Id">Start date, code, crew: <c>2026-10-31-N-B</c>.</param>
public sealed record ShiftInstance(string Id, string Code, string Crew, DateOnly Date, DateTimeOffset Start, DateTimeOffset End);

/// <summary>One time at which a round is due, and the window in which it counts.</summary>
public sealed record Slot(DateTimeOffset DueAt, DateTimeOffset Opens, DateTimeOffset Closes, ShiftInstance Shift);

/// <summary>Shifts and due times. Boundaries are wall-clock times of the site, converted per day.</summary>
public static class Calendar
{
    /// <summary>The same instant with the site's offset.</summary>
    public static DateTimeOffset ToSite(Site site, DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, site.Zone);

    /// <summary>The shift that covers <paramref name="instant"/>.</summary>
    public static ShiftInstance ShiftAt(Site site, DateTimeOffset instant) => throw new NotImplementedException();

    /// <summary>Every shift that has a part in [from, to), in order.</summary>
    public static IEnumerable<ShiftInstance> Shifts(Site site, DateTimeOffset from, DateTimeOffset to) => throw new NotImplementedException();

    /// <summary>Every slot of the round that is due in [from, to), in order.</summary>
    public static IEnumerable<Slot> Slots(Site site, Round round, DateTimeOffset from, DateTimeOffset to) => throw new NotImplementedException();
}
