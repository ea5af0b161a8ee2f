using CsCheck;
using Logbook.Checks;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Handover.Tests;

/// <summary>Whatever is read, and over both changes of the clock.</summary>
public class DueListProperties
{
    // New York's clock goes forward on 8 March and back on 1 November 2026 (IANA tz database).
    private static readonly Gen<DateTimeOffset> Days =
        Gen.OneOf(SmallLine.At("2026-03-07T19:00-05:00"), SmallLine.At("2026-10-31T19:00-04:00"), SmallLine.At("2026-11-24T19:00-05:00"));

    private static readonly Gen<(int Minute, int Point, bool Taken, int Typed)[]> Readings =
        Gen.Select(Gen.Int[0, 24 * 60], Gen.Int[0, 4], Gen.Bool, Gen.Int[0, 90]).Array[0, 25];

    private static readonly string[] Points = ["SL-T1", "SL-L1", "WT-L", "SL-EYE", "CL-G"];

    [Fact]
    public void Every_slot_gets_exactly_one_state_and_no_reading_answers_two() => Gen.Select(Days, Readings).Sample((start, readings) =>
    {
        using var line = Written(start, readings);
        var (from, to) = (start, start.AddHours(26));
        var checks = DueList.Between(line.Desk, from, to);

        var asked = line.Desk.Site.Rounds.SelectMany(r => Calendar.Slots(line.Desk.Site, r, from, to)
            .SelectMany(s => s.Points.Select(p => (r.Id, p, s.DueAt)))).Order();
        Assert.Equal(asked, checks.Select(c => (c.Round, c.Point, c.DueAt)).Order());

        var answers = checks.Where(c => c.Seq is not null).Select(c => (c.Seq, c.Point)).ToList();
        Assert.Equal(answers.Count, answers.Distinct().Count());
        Assert.All(checks, c => Assert.Equal(c.TypedLater || c.State is CheckState.Done or CheckState.Late or CheckState.NotTaken, c.Seq is not null));
        Assert.Equal(checks.OrderBy(c => c.DueAt).Select(c => c.DueAt), checks.Select(c => c.DueAt));
    }, iter: 30);

    [Fact]
    public void A_part_of_a_stretch_says_the_same_as_the_whole() => Gen.Select(Days, Readings, Gen.Int[0, 26], Gen.Int[0, 26]).Sample((start, readings, a, b) =>
    {
        using var line = Written(start, readings);
        var (from, to) = (start.AddHours(Math.Min(a, b)), start.AddHours(Math.Max(a, b)));

        var whole = DueList.Between(line.Desk, start, start.AddHours(26)).Where(c => c.DueAt >= from && c.DueAt < to);

        Assert.Equal(whole, DueList.Between(line.Desk, from, to));
    }, iter: 30);

    [Theory]
    [InlineData("2026-03-07T19:00-05:00", 11)]
    [InlineData("2026-10-31T19:00-04:00", 13)]
    [InlineData("2026-11-24T19:00-05:00", 12)]
    public void An_hourly_round_is_due_once_in_each_hour_that_passes(string start, int hours)
    {
        using var line = new SmallLine(start);
        var shift = Calendar.ShiftAt(line.Desk.Site, SmallLine.At(start));

        var slots = DueList.Between(line.Desk, shift.Start, shift.End).Where(c => c.Round == "hourly").Select(c => c.DueAt).Distinct().ToList();

        Assert.Equal(hours, slots.Count);
        Assert.All(slots.Zip(slots.Skip(1)), pair => Assert.Equal(TimeSpan.FromHours(1), pair.Second - pair.First));
    }

    private static SmallLine Written(DateTimeOffset start, (int Minute, int Point, bool Taken, int Typed)[] readings)
    {
        var line = new SmallLine(start.AddHours(-1));
        foreach (var (minute, point, taken, typed) in readings.OrderBy(r => r.Minute + r.Typed))
        {
            line.Clock(start.AddMinutes(minute + typed));
            var reading = new TypedReading(Points[point], taken ? "1" : "-", Place.Unknown) { Why = taken ? null : "no time", At = start.AddMinutes(minute) };
            line.Record(new EntryRequest("op1", [reading]));
        }

        return line.Clock(start.AddHours(26));
    }
}
