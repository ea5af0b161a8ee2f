using CsCheck;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

/// <summary>What is kept at hand is what the store would have said, or it says nothing.</summary>
public sealed class RecentTests
{
    private static readonly DateTimeOffset Begin = new(2026, 11, 20, 8, 0, 0, TimeSpan.FromHours(-5));

    /// <summary>Entries with readings up to some days old, and corrections of some of them.</summary>
    private static readonly Gen<(double Hour, double Back, int Correct)[]> Histories =
        Gen.Select(Gen.Double[0, 90], Gen.Double[0, 60], Gen.Int[0, 12]).Array[1, 25];

    [Fact]
    public void It_answers_as_the_store_does_or_not_at_all() => Gen.Select(Histories, Gen.Double[0, 90], Gen.Double[0, 40]).Sample((history, at, span) =>
    {
        var store = new InMemoryJournal();
        var recent = new Recent(store);
        var followed = 0;
        foreach (var (hour, back, correct) in history.OrderBy(h => h.Hour))
        {
            var record = store.Append(Draft(store, Begin.AddHours(hour), Begin.AddHours(hour - back), correct));
            if (followed++ % 3 == 0)
            {
                recent.UpTo(record.Seq, record.At).Between("SL-T1", record.At, record.At); // asked on the way
            }
            else if (followed % 2 == 0)
            {
                recent.Appended(record);
            }
        }

        recent.UpTo(store.Head.Seq, Begin.AddHours(history.Max(h => h.Hour)));
        var (from, to) = (Begin.AddHours(at - span), Begin.AddHours(at));
        foreach (var tag in new[] { "SL-T1", "SL-MARGIN" })
        {
            if (recent.Between(tag, from, to) is { } values)
            {
                Assert.Equal(store.Series(tag, from, to.AddMilliseconds(1)).Where(v => v.Value is not null), values);
            }
        }
    });

    [Fact]
    public void It_holds_the_last_day_of_an_ordinary_journal_and_two_weeks_when_they_are_asked_for()
    {
        var store = new InMemoryJournal();
        var recent = new Recent(store);
        for (var hour = 0; hour < 500; hour++)
        {
            store.Append(Draft(store, Begin.AddHours(hour), Begin.AddHours(hour), 12));
        }

        var now = Begin.AddHours(499);
        recent.UpTo(500, now);

        Assert.Equal(25, recent.Between("SL-T1", now.AddHours(-24), now)!.Count);
        Assert.Equal(0.4, recent.ResultOf(recent.Between("SL-MARGIN", now, now)![0])!.U);
        Assert.Equal((14 * 24) + 1, recent.Between("SL-T1", now.AddDays(-14), now)!.Count);
        Assert.Null(recent.Between("SL-T1", now.AddDays(-16), now));
    }

    [Fact]
    public void It_is_moved_forward_by_what_others_write_and_by_nothing_that_came_later()
    {
        var store = new InMemoryJournal();
        var recent = new Recent(store);
        store.Append(Draft(store, Begin, Begin, 12));
        Assert.Single(recent.UpTo(1, Begin).Between("SL-T1", Begin, Begin.AddHours(9))!);
        store.Append(Draft(store, Begin.AddHours(1), Begin.AddHours(1), 12));
        store.Append(Draft(store, Begin.AddHours(2), Begin.AddHours(2), 12));

        Assert.Equal(2, recent.UpTo(2, Begin.AddHours(2)).Between("SL-T1", Begin, Begin.AddHours(9))!.Count);
    }

    /// <summary>An entry; or, now and then, a correction of the last entry.</summary>
    private static RecordDraft Draft(InMemoryJournal store, DateTimeOffset at, DateTimeOffset read, int correct)
    {
        var value = 90 + (at.Minute / 10.0);
        var reading = new Reading { Point = "SL-T1", Typed = "1", Value = value, Unit = "degC", At = read };
        Result[] results = [new("boiling", "margin", "SL-MARGIN", 104 - value, "K", 0.4, "thermometer", "test")];
        var target = store.Read().LastOrDefault(r => r.Body is Entry);
        RecordBody body = correct == 0 && target is not null
            ? new Correction(target.Seq, reading with { At = ((Entry)target.Body).Readings[0].At, Value = value + 1 }, "misread", at.Minute % 2 == 0 ? results : [], [])
            : new Entry { Readings = [reading], Results = results };
        return new RecordDraft(body, "line-1", at, at, "2026-11-20-D-A", "op1", "test:1");
    }
}
