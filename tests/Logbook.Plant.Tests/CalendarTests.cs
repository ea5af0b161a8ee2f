using System.Globalization;
using CsCheck;
using Logbook.Plant;

namespace Logbook.Plant.Tests;

/// <summary>Dates of the clock changes: US Energy Policy Act of 2005, section 110, as in the IANA time zone database.</summary>
public sealed class CalendarTests
{
    private static readonly Site Site = StarterSite.Site;

    private static Round Round(Schedule schedule) =>
        new() { Id = "r", Title = "Round", Schedule = schedule, Points = ["SL-T1", "SL-I"] };

    private static List<Slot> SlotsOf(Schedule schedule, ShiftInstance shift, Site? site = null) =>
        [.. Calendar.Slots(site ?? Site, Round(schedule), shift.Start, shift.End)];

    [Theory]
    [InlineData(2026, 3, 7, 11)]
    [InlineData(2026, 10, 31, 13)]
    [InlineData(2026, 6, 1, 12)]
    public void A_night_in_New_York_has_its_real_length(int year, int month, int day, int hours)
    {
        var night = Calendar.ShiftAt(Site, StarterSite.NewYork(year, month, day, 22));

        Assert.Equal(hours, (night.End - night.Start).TotalHours);
        Assert.Equal(hours, SlotsOf(new Schedule.Every(TimeSpan.FromHours(1)), night).Count);
    }

    [Theory]
    // US Department of Labor, Fair Labor Standards Act advice on daylight saving time: an eight-hour night is seven hours or nine.
    [InlineData(2026, 3, 7, 7)]
    [InlineData(2026, 10, 31, 9)]
    public void An_eight_hour_night_has_its_real_length(int year, int month, int day, int hours)
    {
        var site = Site with { Shifts = [new("M", new(7, 0)), new("A", new(15, 0)), new("N", new(23, 0))] };

        var night = Calendar.ShiftAt(site, StarterSite.NewYork(year, month, day, 23, 30));

        Assert.Equal(hours, (night.End - night.Start).TotalHours);
    }

    [Theory]
    [InlineData("2026-01-01", "D", "A")]
    [InlineData("2026-01-02", "D", "A")]
    [InlineData("2026-01-03", "N", "A")]
    [InlineData("2026-01-03", "D", "B")]
    [InlineData("2026-01-01", "N", "D")]
    [InlineData("2025-12-31", "D", "D")]
    public void The_pattern_says_which_crew_is_due(string date, string shift, string crew) =>
        Assert.Equal(crew, Site.Crews.On(DateOnly.Parse(date, CultureInfo.InvariantCulture), shift).Single());

    [Fact]
    public void A_shift_is_named_by_its_start_date_letter_and_crew()
    {
        var night = Calendar.ShiftAt(Site, StarterSite.NewYork(2026, 11, 1, 3));

        Assert.Equal("2026-10-31-N-C", night.Id);
        Assert.Equal(new DateOnly(2026, 10, 31), night.Date);
    }

    [Fact]
    public void A_shift_covers_its_start_and_not_its_end()
    {
        var day = Calendar.ShiftAt(Site, StarterSite.NewYork(2026, 5, 1, 7));

        Assert.Equal("D", day.Code);
        Assert.Equal("N", Calendar.ShiftAt(Site, day.End).Code);
        Assert.Equal(day, Calendar.ShiftAt(Site, day.End.AddTicks(-1)));
    }

    private static readonly Gen<Site> Sites =
        from zone in Any.Of("America/New_York", "Australia/Lord_Howe", "Pacific/Apia", "UTC")
        from starts in Gen.Int[0, 1439].Array[1, 4]
        select Site with
        {
            Zone = TimeZoneInfo.FindSystemTimeZoneById(zone),
            Shifts = [.. starts.Distinct().Select((m, i) => new ShiftTime(((char)('A' + i)).ToString(), TimeOnly.FromTimeSpan(TimeSpan.FromMinutes(m))))],
        };

    private static readonly Gen<DateTimeOffset> Instants =
        Gen.Int[0, 20 * 366 * 24 * 60].Select(m => new DateTimeOffset(2010, 1, 1, 0, 0, 0, TimeSpan.Zero).AddMinutes(m));

    [Fact]
    public void Every_instant_is_in_exactly_one_shift_and_shifts_join() => Gen.Select(Sites, Instants).Sample((site, instant) =>
    {
        var shifts = Calendar.Shifts(site, instant.AddDays(-2), instant.AddDays(2)).ToList();
        return shifts.Count(s => s.Start <= instant && instant < s.End) == 1
            && shifts[0].Start <= instant.AddDays(-2) && shifts[^1].End >= instant.AddDays(2)
            && shifts.Zip(shifts.Skip(1)).All(p => p.First.End == p.Second.Start)
            && shifts.All(s => s.Start < s.End)
            && Calendar.ShiftAt(site, instant) == shifts.Single(s => s.Start <= instant && instant < s.End);
    }, iter: 3000);

    private static readonly Gen<Schedule> Schedules = Gen.OneOf<Schedule>(
        Gen.Int[5, 24 * 60].Select(m => (Schedule)new Schedule.Every(TimeSpan.FromMinutes(m))),
        Gen.Int[0, 1439].Array[1, 5].Select(ms => (Schedule)new Schedule.At([.. ms.Select(m => TimeOnly.FromTimeSpan(TimeSpan.FromMinutes(m)))])),
        Any.Of("shift", "day", "week").Select(p => (Schedule)new Schedule.Per(p)));

    [Fact]
    public void Slots_of_two_stretches_are_those_of_the_whole() => Gen.Select(Sites, Schedules, Instants, Gen.Int[1, 20_000], Gen.Int[1, 20_000]).Sample((site, schedule, from, first, second) =>
    {
        var (middle, to) = (from.AddMinutes(first), from.AddMinutes(first + second));
        List<DateTimeOffset> Due(DateTimeOffset a, DateTimeOffset b) => [.. Calendar.Slots(site, Round(schedule), a, b).Select(s => s.DueAt)];

        var whole = Due(from, to);
        return whole.SequenceEqual(Due(from, middle).Concat(Due(middle, to)))
            && whole.SequenceEqual(whole.Distinct().Order())
            && Calendar.Slots(site, Round(schedule), from, to).All(s => s.Shift == Calendar.ShiftAt(site, s.DueAt));
    }, iter: 1000);

    [Fact]
    public void A_wall_clock_round_in_the_missing_hour_falls_due_at_its_end()
    {
        var due = Calendar.Slots(Site, Round(new Schedule.At([new(2, 30)])), StarterSite.NewYork(2026, 3, 8), StarterSite.NewYork(2026, 3, 9)).Single().DueAt;

        Assert.Equal(StarterSite.NewYork(2026, 3, 8, 3), due);
    }

    [Fact]
    public void A_wall_clock_round_in_the_repeated_hour_falls_due_once_the_first_time()
    {
        var due = Calendar.Slots(Site, Round(new Schedule.At([new(1, 30)])), StarterSite.NewYork(2026, 11, 1), StarterSite.NewYork(2026, 11, 2)).Single().DueAt;

        Assert.Equal(new DateTimeOffset(2026, 11, 1, 1, 30, 0, TimeSpan.FromHours(-4)), due);
    }

    [Theory]
    [InlineData("shift", 14)]
    [InlineData("day", 7)]
    [InlineData("week", 1)]
    public void A_round_once_in_a_period_is_open_from_its_start_to_its_end(string period, int count)
    {
        var slots = Calendar.Slots(Site, Round(new Schedule.Per(period)), StarterSite.NewYork(2026, 6, 1, 7), StarterSite.NewYork(2026, 6, 8, 7)).ToList();

        Assert.Equal(count, slots.Count);
        Assert.All(slots, s => Assert.Equal(TimeSpan.FromMinutes(15), s.Closes - s.DueAt));
        Assert.Equal(StarterSite.NewYork(2026, 6, 1, 7), slots[0].Opens);
        Assert.All(slots.Zip(slots.Skip(1)), p => Assert.Equal(p.First.Closes, p.Second.Opens));
    }

    [Fact]
    public void Near_a_shift_change_only_safety_points_are_due()
    {
        var site = Site with { KeepClear = TimeSpan.FromMinutes(30) };
        var day = Calendar.ShiftAt(site, StarterSite.NewYork(2026, 6, 1, 12));

        var slots = SlotsOf(new Schedule.Every(TimeSpan.FromMinutes(15)), day, site);

        Assert.Equal(48, slots.Count);
        Assert.Equal(["SL-T1"], slots[0].Points);
        Assert.Equal(["SL-T1"], slots[1].Points);
        Assert.Equal(["SL-T1", "SL-I"], slots[2].Points);
        Assert.Equal(["SL-T1", "SL-I"], slots[^2].Points);
        Assert.Equal(["SL-T1"], slots[^1].Points);
    }

    [Fact]
    public void A_round_once_a_shift_falls_due_clear_of_the_change()
    {
        var site = Site with { KeepClear = TimeSpan.FromMinutes(30) };
        var day = Calendar.ShiftAt(site, StarterSite.NewYork(2026, 6, 1, 12));

        var slot = Assert.Single(SlotsOf(new Schedule.Per("shift"), day, site));

        Assert.Equal(StarterSite.NewYork(2026, 6, 1, 18, 30), slot.DueAt);
        Assert.Equal(2, slot.Points.Count);
    }

    [Fact]
    public void Near_a_shift_change_a_round_without_safety_points_is_not_due()
    {
        var site = Site with { KeepClear = TimeSpan.FromMinutes(30) };
        var day = Calendar.ShiftAt(site, StarterSite.NewYork(2026, 6, 1, 12));
        var round = Round(new Schedule.Every(TimeSpan.FromHours(1))) with { Points = ["SL-I"] };

        Assert.Equal(11, Calendar.Slots(site, round, day.Start, day.End).Count());
    }
}
