using System.Globalization;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Handover.Tests;

/// <summary>
/// Entries typed through a night in which the wall clock is put back: each keeps the offset of its moment, and nothing goes by
/// what the wall showed. The changes are those of the IANA time zone database: northamerica (Canada), europe (EU),
/// southamerica (Brazil, 17 February 2019), australasia (LH).
/// </summary>
public sealed class ClocksTests
{
    [Theory]
    [InlineData("America/Halifax", "2026-11-01T04:00Z", "01:00-03:00 01:30-03:00 01:00-04:00 01:30-04:00 02:00-04:00")]
    [InlineData("Europe/Helsinki", "2026-10-25T00:00Z", "03:00+03:00 03:30+03:00 03:00+02:00 03:30+02:00 04:00+02:00")]
    [InlineData("America/Sao_Paulo", "2019-02-17T01:00Z", "23:00-02:00 23:30-02:00 23:00-03:00 23:30-03:00 00:00-03:00")]
    [InlineData("Australia/Lord_Howe", "2026-04-04T14:30Z", "01:30+11:00 01:30+10:30 02:00+10:30 02:30+10:30 03:00+10:30")]
    [InlineData("Europe/Helsinki", "2026-03-29T00:00Z", "02:00+02:00 02:30+02:00 04:00+03:00 04:30+03:00 05:00+03:00")]
    public void Each_record_keeps_the_offset_of_its_moment_and_order_is_by_number(string zone, string begins, string shown)
    {
        var files = Some.Changed(("America/New_York", zone));
        using var line = new SmallLine(SmallLine.At(begins), files, Some.Calculations);
        var expected = shown.Split(' ');

        for (var i = 0; i < expected.Length; i++)
        {
            line.Clock(SmallLine.At(begins).AddMinutes(30 * i)).Record("hourly", $"SL-T1=10{i}.5");
        }

        var entries = line.Desk.Store.Read().Where(r => r.Body is Entry).ToList();
        Assert.Equal(expected, entries.Select(r => r.At.ToString("HH:mmzzz", CultureInfo.InvariantCulture)), StringComparer.Ordinal);
        Assert.Equal(entries.Select(r => r.At.UtcDateTime).Order(), entries.Select(r => r.At.UtcDateTime));
        Assert.All(entries, r => Assert.Contains($"\"offset\":\"{r.At.ToString("zzz", CultureInfo.InvariantCulture)}\"", System.Text.Encoding.UTF8.GetString(r.Bytes.Span), StringComparison.Ordinal));
        Assert.Equal(["100.5", "101.5", "102.5", "103.5", "104.5"], line.Desk.Store.Series("SL-T1", SmallLine.At(begins), SmallLine.At(begins).AddDays(1)).Select(v => v.Typed), StringComparer.Ordinal);
        Assert.Empty(line.Desk.State.ClockJumps);
        Assert.Equal("104.5", line.Desk.State.Latest["SL-T1"].Typed);
    }

    [Theory]
    [InlineData("Europe/Helsinki")]
    [InlineData("Australia/Lord_Howe")]
    [InlineData("Asia/Kolkata")]
    public void A_clock_that_a_hand_set_back_is_told_in_the_sites_time_and_order_stays_by_number(string zone)
    {
        var clock = new HandSetClock(SmallLine.At("2026-06-10T08:00Z"));
        var desk = Some.Desk(clock, files: Some.Changed(("America/New_York", zone)));
        Written Save(string value) => RecordEntry.Run(desk, Some.Entry($"SL-T1={value}"));

        Assert.Empty(Save("101.0").Mistakes);
        clock.Now -= TimeSpan.FromHours(3);
        Assert.Empty(Save("101.4").Mistakes);
        Assert.Empty(Save("101.6").Mistakes);

        Assert.Equal(["site", "entry", "clock", "entry", "entry"], desk.Store.Read().Select(r => r.Kind), StringComparer.Ordinal);
        var jump = Assert.Single(NowView.Of(desk).ClockJumps);
        Assert.Equal((SmallLine.At("2026-06-10T08:00Z"), SmallLine.At("2026-06-10T05:00Z")), (jump.Before, jump.After));
        Assert.Equal(desk.Site.Zone.GetUtcOffset(jump.After), desk.Store.Read(4).First().At.Offset);
        Assert.Equal([1L, 2, 3, 4, 5], desk.Store.Read().Select(r => r.Seq));
        Assert.True(desk.Store.Verify().Ok);
        Assert.Empty(Writing.AcknowledgeClock(desk, jump.Id, "set by hand", "eng1").Mistakes);
        Assert.Empty(NowView.Of(desk).ClockJumps);
    }

    private sealed class HandSetClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override DateTimeOffset GetUtcNow() => Now.ToUniversalTime();
    }
}
