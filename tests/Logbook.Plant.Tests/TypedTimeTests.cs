using System.Globalization;
using CsCheck;
using Logbook.Plant;

namespace Logbook.Plant.Tests;

/// <summary>
/// The clock changes of New York in 2026, 8 March and 1 November at 02:00, are those of the US Energy Policy Act of 2005,
/// section 110 (second Sunday of March, first Sunday of November), as in the IANA time zone database.
/// </summary>
public sealed class TypedTimeTests
{
    private static readonly DateTimeOffset Now = StarterSite.NewYork(2026, 11, 25, 10, 30);

    private static DateTimeOffset? Read(string text, out Mistake? mistake) => Typed.Time(text, StarterSite.Site, Now, Place.Unknown, out mistake);

    [Theory]
    [InlineData("2026-11-25T10:00", "2026-11-25T10:00:00-05:00")]
    [InlineData("2026-11-25 10:00", "2026-11-25T10:00:00-05:00")]
    [InlineData("2026-07-01T10:00:30", "2026-07-01T10:00:30-04:00")]
    [InlineData("2026-11-25T10:00-05:00", "2026-11-25T10:00:00-05:00")]
    [InlineData("2026-11-25T15:00Z", "2026-11-25T10:00:00-05:00")]
    [InlineData("2026-11-25T17:00+02:00", "2026-11-25T10:00:00-05:00")]
    [InlineData("10:00", "2026-11-25T10:00:00-05:00")]
    [InlineData("6:05", "2026-11-25T06:05:00-05:00")]
    [InlineData("2026-11-01T01:30-04:00", "2026-11-01T01:30:00-04:00")]
    [InlineData("2026-11-01T01:30-05:00", "2026-11-01T01:30:00-05:00")]
    public void A_time_is_read_with_the_sites_offset(string text, string expected) =>
        Assert.Equal(expected, Read(text, out _)?.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture));

    [Theory]
    [InlineData("06:00", "2026-11-26T06:00:00-05:00")]
    [InlineData("11:00", "2026-11-25T11:00:00-05:00")]
    [InlineData("2026-11-25T06:00", "2026-11-25T06:00:00-05:00")]
    public void What_is_still_to_come_is_the_next_one_of_a_bare_time(string text, string expected) =>
        Assert.Equal(expected, Typed.TimeAhead(text, StarterSite.Site, Now, Place.Unknown, out _)?.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture));

    [Theory]
    [InlineData("10:00", "2026-11-25T10:00:00-05:00")]
    [InlineData("22:40", "2026-11-24T22:40:00-05:00")]
    [InlineData("12:00", "2026-11-25T12:00:00-05:00")]
    [InlineData("2026-11-25T22:40", "2026-11-25T22:40:00-05:00")]
    public void What_has_been_is_last_night_of_a_bare_time_within_twelve_hours(string text, string expected) =>
        Assert.Equal(expected, Typed.TimeBack(text, StarterSite.Site, Now, Place.Unknown, out _)?.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture));

    [Fact]
    public void A_time_in_the_repeated_hour_is_refused_with_both_readings()
    {
        Assert.Null(Read("2026-11-01T01:30", out var mistake));

        Assert.Equal(
            "'2026-11-01T01:30' came twice at the site: the clock was put back over it; " +
            "accepted: 2026-11-01T01:30:00-04:00 for the first, 2026-11-01T01:30:00-05:00 for the second",
            mistake!.ToString());
    }

    [Fact]
    public void A_time_in_the_missing_hour_is_refused()
    {
        Assert.Null(Read("2026-03-08T02:30", out var mistake));

        Assert.Equal(
            "'2026-03-08T02:30' did not exist at the site: the clock was put forward over it; from 03:00 on it exists",
            mistake!.ToString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("yesterday")]
    [InlineData("25.11.2026 10:00")]
    [InlineData("11/25/2026 10:00")]
    [InlineData("2026-11-25")]
    [InlineData("2026-13-01T10:00")]
    [InlineData("2026-02-29T10:00")]
    [InlineData("24:00")]
    [InlineData("10.00")]
    [InlineData("0001-01-01T00:00+05:00")]
    [InlineData("9999-12-31T23:59")]
    [InlineData("2026-11-25T10:00 EST")]
    public void What_is_no_time_is_refused(string text)
    {
        Assert.Null(Read(text, out var mistake));
        Assert.Contains("accepted: 2026-11-25T10:00", mistake!.ToString(), StringComparison.Ordinal);
    }

    private static Gen<(Site Site, DateTime Local)> In(params string[] zones) =>
        from zone in Any.Of(zones)
        from minute in Gen.Int[0, 20 * 366 * 24 * 60]
        select (StarterSite.Site with { Zone = TimeZoneInfo.FindSystemTimeZoneById(zone) }, new DateTime(2008, 1, 1).AddMinutes(minute));

    /// <summary>Zones whose clock is only put forward and back, so that the library can say what is missing or repeated.</summary>
    private static readonly Gen<(Site Site, DateTime Local)> Usual =
        In("America/New_York", "Australia/Lord_Howe", "Europe/Helsinki", "Asia/Kolkata", "UTC");

    /// <summary>Samoa went over the date line and has no 30 December 2011 (IANA time zone database).</summary>
    private static readonly Gen<(Site Site, DateTime Local)> Anywhere = In("America/New_York", "Australia/Lord_Howe", "Pacific/Apia");

    private static DateTimeOffset? Read((Site Site, DateTime Local) x) =>
        Typed.Time($"{x.Local:yyyy-MM-ddTHH:mm}", x.Site, Now, Place.Unknown, out _);

    [Fact]
    public void A_local_time_is_the_instant_that_shows_it_or_is_refused() =>
        Anywhere.Sample(x => Read(x) is not { } instant || Calendar.ToSite(x.Site, instant).EqualsExact(new DateTimeOffset(x.Local, instant.Offset)), iter: 5_000);

    [Fact]
    public void Only_a_missing_or_repeated_time_is_refused() =>
        Usual.Sample(x => Read(x) is null == (x.Site.Zone.IsInvalidTime(x.Local) || x.Site.Zone.IsAmbiguousTime(x.Local)), iter: 5_000);

    [Fact]
    public void An_instant_printed_with_its_offset_is_read_again() => Anywhere.Sample(x =>
    {
        var instant = Calendar.ToSite(x.Site, new DateTimeOffset(x.Local, TimeSpan.Zero));
        return Typed.Time($"{instant:yyyy-MM-ddTHH:mm:sszzz}", x.Site, Now, Place.Unknown, out _)?.EqualsExact(instant) == true;
    }, iter: 5_000);

    [Fact]
    public void A_schedules_local_time_is_the_first_instant_that_shows_it_or_a_later_time() => Anywhere.Sample(x =>
    {
        var at = Calendar.AtSite(x.Site, x.Local);
        var before = Calendar.ToSite(x.Site, at.AddMinutes(-1)).DateTime;
        return at.DateTime == x.Local
            ? Calendar.ToSite(x.Site, at.AddHours(-1)).DateTime != x.Local
            : before < x.Local && x.Local < at.DateTime;
    }, iter: 5_000);
}
