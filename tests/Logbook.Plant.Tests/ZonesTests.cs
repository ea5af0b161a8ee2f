using System.Globalization;
using Logbook.Plant;

namespace Logbook.Plant.Tests;

/// <summary>
/// Nights from 19:00 to 07:00 in zones that differ in what they do to the clock. The changes are those of the IANA time zone
/// database, by its file and rule: europe, EU (last Sunday of March and October at 01:00 UTC); northamerica, Canada (second
/// Sunday of March, first of November, 02:00); southamerica, Brazil (4 November 2018 and 17 February 2019 at midnight, none
/// since); australasia, LH (half an hour: first Sunday of April and of October at 02:00) and Pacific/Apia (30 December 2011
/// never was); asia, Kolkata (none since 1945).
/// </summary>
public sealed class ZonesTests
{
    private static Site In(string zone) => StarterSite.Site with
    {
        Zone = TimeZoneInfo.FindSystemTimeZoneById(zone), Shifts = [new("D", new(7, 0)), new("N", new(19, 0))], KeepClear = TimeSpan.Zero,
    };

    private static Round Round(Schedule schedule) => new() { Id = "r", Title = "Round", Schedule = schedule, Points = ["SL-T1"] };

    [Theory]
    [InlineData("Europe/Helsinki", "2026-03-28", 11, "+02:00", "+03:00")]
    [InlineData("Europe/Helsinki", "2026-10-24", 13, "+03:00", "+02:00")]
    [InlineData("Europe/Helsinki", "2035-03-24", 11, "+02:00", "+03:00")]
    [InlineData("America/Halifax", "2026-03-07", 11, "-04:00", "-03:00")]
    [InlineData("America/Halifax", "2026-10-31", 13, "-03:00", "-04:00")]
    [InlineData("America/Halifax", "2006-04-01", 11, "-04:00", "-03:00")]
    [InlineData("America/Halifax", "2006-10-28", 13, "-03:00", "-04:00")]
    [InlineData("America/Sao_Paulo", "2018-11-03", 11, "-03:00", "-02:00")]
    [InlineData("America/Sao_Paulo", "2019-02-16", 13, "-02:00", "-03:00")]
    [InlineData("America/Sao_Paulo", "2026-10-31", 12, "-03:00", "-03:00")]
    [InlineData("Australia/Lord_Howe", "2026-10-03", 11.5, "+10:30", "+11:00")]
    [InlineData("Australia/Lord_Howe", "2026-04-04", 12.5, "+11:00", "+10:30")]
    [InlineData("Asia/Kolkata", "2026-03-28", 12, "+05:30", "+05:30")]
    [InlineData("Pacific/Apia", "2011-12-29", 12, "-10:00", "+14:00")]
    public void A_night_has_its_real_length_and_its_rounds(string zone, string date, double hours, string evening, string morning)
    {
        var site = In(zone);
        var day = DateTime.Parse(date, CultureInfo.InvariantCulture);
        var night = Calendar.ShiftAt(site, Calendar.AtSite(site, day.AddHours(19)));

        Assert.Equal((hours, "N", DateOnly.FromDateTime(day)), ((night.End - night.Start).TotalHours, night.Code, night.Date));
        Assert.Equal((19, 7), (night.Start.Hour, night.End.Hour));
        Assert.Equal((evening, morning), (night.Start.ToString("zzz", CultureInfo.InvariantCulture), night.End.ToString("zzz", CultureInfo.InvariantCulture)));
        Assert.Equal(Math.Ceiling(hours), Calendar.Slots(site, Round(new Schedule.Every(TimeSpan.FromHours(1))), night.Start, night.End).Count());
    }

    [Theory]
    // What the wall shows while the clock is put forward or back; the second offset, where there is one, is of its second time.
    [InlineData("Europe/Helsinki", "2026-03-29T03:30", "")]
    [InlineData("Europe/Helsinki", "2026-10-25T03:30", "+03:00 +02:00")]
    [InlineData("America/Halifax", "2026-11-01T01:30", "-03:00 -04:00")]
    [InlineData("America/Sao_Paulo", "2018-11-04T00:30", "")]
    [InlineData("America/Sao_Paulo", "2019-02-16T23:30", "-02:00 -03:00")]
    [InlineData("America/Sao_Paulo", "2026-02-15T23:30", "-03:00")]
    [InlineData("Australia/Lord_Howe", "2026-10-04T02:15", "")]
    [InlineData("Australia/Lord_Howe", "2026-10-04T02:45", "+11:00")]
    [InlineData("Australia/Lord_Howe", "2026-04-05T01:45", "+11:00 +10:30")]
    [InlineData("Australia/Lord_Howe", "2026-04-05T01:15", "+11:00")]
    [InlineData("Pacific/Apia", "2011-12-30T12:00", "")]
    [InlineData("Pacific/Apia", "2011-12-31T00:00", "+14:00")]
    public void A_time_on_the_wall_is_typed_as_it_can_be_meant(string zone, string typed, string offsets)
    {
        var site = In(zone);
        var now = DateTimeOffset.Parse(typed, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal).AddDays(3);
        var meant = offsets.Split(' ', StringSplitOptions.RemoveEmptyEntries);

        var read = Typed.Time(typed, site, now, Place.Unknown, out var mistake);

        Assert.Equal(meant.Length == 1 ? typed + ":00" + meant[0] : null, read?.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture));
        Assert.Equal(meant.Length == 1, mistake is null);
        Assert.All(meant, offset => Assert.NotNull(Typed.Time(typed + offset, site, now, Place.Unknown, out _)));
        if (meant.Length == 2)
        {
            Assert.All(meant, offset => Assert.Contains(typed + ":00" + offset, mistake!.Accepted, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_date_that_never_was_has_no_shift_and_no_round()
    {
        var site = In("Pacific/Apia");
        var (from, to) = (Calendar.AtSite(site, new(2011, 12, 29, 7, 0, 0)), Calendar.AtSite(site, new(2012, 1, 1, 7, 0, 0)));

        Assert.Equal(["29 D 12", "29 N 12", "31 D 12", "31 N 12"], Calendar.Shifts(site, from, to).Select(s => FormattableString.Invariant($"{s.Date.Day} {s.Code} {(s.End - s.Start).TotalHours}")), StringComparer.Ordinal);
        Assert.Equal(["29 08:00", "31 08:00"], Due(new Schedule.At([new(8, 0)])), StringComparer.Ordinal);
        Assert.Equal(2, Due(new Schedule.Per("day")).Count());

        IEnumerable<string> Due(Schedule schedule) => Calendar.Slots(site, Round(schedule), from, to).Select(s => s.DueAt.ToString("dd HH:mm", CultureInfo.InvariantCulture));
    }
}
