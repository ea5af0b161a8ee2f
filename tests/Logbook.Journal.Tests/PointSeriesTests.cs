using Logbook.Testing;

namespace Logbook.Journal.Tests;

public sealed class PointSeriesTests : IDisposable
{
    private static readonly DateTimeOffset Eight = Drafts.Morning;

    private readonly InMemoryJournal _journal = new();

    public void Dispose() => _journal.Dispose();

    [Fact]
    public void A_series_goes_by_the_time_of_reading_and_then_by_sequence()
    {
        _journal.Append(Drafts.Entry(Eight.AddHours(2), "SL-T1=102"));
        _journal.Append(Drafts.Of(new Entry { Readings = [Drafts.Read("SL-T1=99", Eight)] }, Eight.AddHours(3))); // walked first, typed later
        _journal.Append(Drafts.Entry(Eight.AddHours(2), "sl-t1=103", "SL-T2=5"));

        Assert.Equal([99, 102, 103], Values("SL-T1"));
    }

    [Fact]
    public void The_range_includes_its_start_and_not_its_end()
    {
        foreach (var hour in (int[])[0, 1, 2])
            _journal.Append(Drafts.Entry(Eight.AddHours(hour), $"SL-T1={hour}"));

        Assert.Equal([0, 1], _journal.Series("SL-T1", Eight, Eight.AddHours(2)).Select(v => v.Value!.Value));
        Assert.Equal([1L, 2L], _journal.Between(Eight, Eight.AddHours(2)).Select(r => r.Seq));
    }

    [Fact]
    public void A_reading_that_was_not_taken_stands_with_its_reason()
    {
        _journal.Append(Drafts.Entry(Eight, "SL-T1=-"));

        var value = Assert.Single(_journal.Series("SL-T1", Eight, Eight.AddHours(1)));
        Assert.Equal((null, "no time", "hourly"), (value.Value, value.Why, value.Round));
    }

    [Fact]
    public void A_correction_replaces_the_reading_and_the_last_one_rules()
    {
        _journal.Append(Drafts.Entry(Eight, "SL-T1=130", "SL-T2=80"));
        _journal.Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=113", Eight), "misread", [], [])));
        _journal.Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=103", Eight), "misread again", [], [])));

        var value = Assert.Single(_journal.Series("SL-T1", Eight, Eight.AddHours(1)));
        Assert.Equal((103, "103", 1L, 3L), (value.Value, value.Typed, value.Seq, value.CorrectedBy));
        Assert.Null(Assert.Single(_journal.Series("SL-T2", Eight, Eight.AddHours(1))).CorrectedBy);
    }

    [Fact]
    public void A_correction_that_moves_a_reading_moves_it_out_of_one_range_and_into_another()
    {
        _journal.Append(Drafts.Entry(Eight, "SL-T1=103"));
        _journal.Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=103", Eight.AddHours(5)), "wrong hour", [], [])));

        Assert.Empty(_journal.Series("SL-T1", Eight, Eight.AddHours(1)));
        Assert.Single(_journal.Series("SL-T1", Eight.AddHours(5), Eight.AddHours(6)));
    }

    [Fact]
    public void Of_several_readings_of_one_point_the_one_with_the_corrections_time_is_meant_else_the_newest()
    {
        _journal.Append(Drafts.Of(new Entry { Readings = [Drafts.Read("SL-T1=1", Eight), Drafts.Read("SL-T1=2", Eight.AddHours(1)), Drafts.Read("SL-T1=3", Eight.AddHours(2))] }));
        _journal.Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=20", Eight.AddHours(1)), "misread", [], [])));
        _journal.Append(Drafts.Of(new Correction(1, Drafts.Read("SL-T1=30", Eight.AddHours(3)), "misread", [], [])));

        Assert.Equal([1, 20, 30], Values("SL-T1"));
    }

    [Fact]
    public void Results_of_a_correction_stand_for_all_of_the_entry_at_the_entrys_time()
    {
        _journal.Append(Drafts.Of(new Entry { Readings = [Drafts.Read("WL-A=9", Eight)], Results = [Drafts.Derived("WL-CE", 70), Drafts.Derived("WL-EA", 60)] }, Eight));
        _journal.Append(Drafts.Of(new Correction(1, Drafts.Read("WL-A=8", Eight), "misread", [Drafts.Derived("WL-CE", 82), Drafts.Derived("WL-TTA", 120)], []), Eight.AddHours(4)));

        Assert.Equal([82], Values("WL-CE"));
        Assert.Empty(Values("WL-EA"));
        Assert.Equal((Eight, 1L, 2L), Assert.Single(_journal.Series("WL-TTA", Eight, Eight.AddHours(1))) is var v ? (v.At, v.Seq, v.CorrectedBy) : default);
    }

    private double[] Values(string tag) => [.. _journal.Series(tag, DateTimeOffset.MinValue, DateTimeOffset.MaxValue).Select(v => v.Value!.Value)];
}
