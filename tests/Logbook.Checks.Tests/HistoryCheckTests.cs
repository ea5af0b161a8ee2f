using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class HistoryCheckTests
{
    private readonly Line _line = new();

    private HashSet<string> Codes(params string[] readings) => _line.Save(readings).Findings.Select(f => f.Code).ToHashSet(StringComparer.Ordinal);

    [Theory]
    [InlineData(1, "107.0", false)]
    [InlineData(1, "107.1", true)]
    [InlineData(2, "112.9", false)]
    [InlineData(2, "113.1", true)]
    public void A_change_beyond_the_believable_step_is_found(int hours, string then, bool found)
    {
        _line.Save("SL-T1=101.0");
        _line.Later(hours);

        Assert.Equal(found, Codes("SL-T1=" + then).Contains("step"));
    }

    [Theory]
    [InlineData("SL-F1=302", false)]
    [InlineData("SL-F1=450", true)]
    public void A_second_reading_is_not_judged_by_the_one_that_it_is_to_check(string again, bool found)
    {
        _line.Save("SL-F1=301");
        _line.Later(1);
        var suspect = _line.Record("SL-F1=450").Seq;
        _line.Later(TimeSpan.FromMinutes(5));

        var second = RecordEntry.Judge(_line.Desk, Some.Entry(again) with { SecondOf = suspect }).Value!;

        Assert.Equal(found, second.Findings.Any(f => f.Code == "step"));
        Assert.Contains(RecordEntry.Judge(_line.Desk, Some.Entry("SL-F1=190")).Value!.Findings, f => f.Code == "step");
    }

    // Flow with u = 1 %: of 292 it is 2.92, and 3 x sqrt 2 x 2.92 = 12.4 m3/h; the step of 100 an hour is no tighter.
    [Theory]
    [InlineData("SL-F1=262", "SL-F1 read twice, 292 and 262 m3/h within 3 min: 30 m3/h apart; one of the two is a slip, a third reading tells")]
    [InlineData("SL-F1=279", "SL-F1 read twice, 292 and 279 m3/h within 3 min: 13 m3/h apart; one of the two is a slip, a third reading tells")]
    [InlineData("SL-F1=280", null)]
    public void Two_readings_further_apart_than_chance_say_so(string again, string? found)
    {
        _line.Save("SL-F1=291");
        _line.Later(1);
        var first = _line.Record("SL-F1=292").Seq;
        _line.Later(TimeSpan.FromMinutes(3));

        var twice = RecordEntry.Judge(_line.Desk, Some.Entry(again) with { SecondOf = first }).Value!.Findings.Where(f => f.Code == "twice").ToList();

        Assert.Equal(found, twice.SingleOrDefault()?.Text);
        Assert.All(twice, f => Assert.Equal((Level.Watch, "SL-F1"), (f.Level, f.Settles)));
        Assert.DoesNotContain(RecordEntry.Judge(_line.Desk, Some.Entry(again)).Value!.Findings, f => f.Code == "twice");
    }

    // The feed's u is 1.5 %, 0.3 of 20 t/h, so chance explains 1.27; its step is 6. Agitator: u = 1 A, 4.24 A.
    [Theory]
    [InlineData("LM-F1", "20.00", "18.00", true)]
    [InlineData("LM-F1", "20.00", "19.00", false)]
    [InlineData("SL-I", "100", "105", true)]
    [InlineData("SL-I", "100", "104", false)]
    public void A_second_reading_in_the_same_row_is_held_against_the_first_too(string tag, string one, string other, bool found)
    {
        var entry = RecordEntry.Judge(_line.Desk, new EntryRequest("op1", [Some.Reading(tag, one) with { Second = other }])).Value!;

        Assert.Equal(found, entry.Findings.Any(f => f.Code == "twice"));
    }

    [Fact]
    public void Two_readings_an_hour_apart_may_both_be_right()
    {
        var first = _line.Record("SL-F1=292").Seq;
        _line.Later(1);

        Assert.DoesNotContain(RecordEntry.Judge(_line.Desk, Some.Entry("SL-F1=262") with { SecondOf = first }).Value!.Findings, f => f.Code == "twice");
    }

    [Fact]
    public void While_the_slaker_is_urgent_nobody_is_sent_to_read_a_third_time()
    {
        var first = _line.Record("SL-F1=292").Seq;
        _line.Later(TimeSpan.FromMinutes(3));

        var findings = RecordEntry.Judge(_line.Desk, Some.Entry("SL-F1=190") with { SecondOf = first }).Value!.Findings;

        var twice = findings.Single(f => f.Code == "twice");
        Assert.Equal("also: SL-F1 read twice, 292 and 190 m3/h within 3 min: 102 m3/h apart", twice.Text);
        Assert.Null(twice.Settles);
    }

    [Theory]
    [InlineData("99.4", false)]
    [InlineData("60.0", true)]
    public void After_a_doubted_step_one_that_is_back_where_the_point_was_is_not_doubted(string then, bool found)
    {
        _line.Save("SL-T1=99.0");
        _line.Later(1);
        Assert.Contains("step", Codes("SL-T1=9.94"));
        _line.Later(TimeSpan.FromMinutes(5));

        Assert.Equal(found, Codes("SL-T1=" + then).Contains("step"));
        _line.Later(1);
        Assert.Equal(found, Codes("SL-T1=99.2").Contains("step"));
    }

    [Fact]
    public void Within_an_hour_the_whole_step_is_allowed()
    {
        _line.Save("SL-I=95");
        _line.Later(TimeSpan.FromMinutes(5));

        Assert.Empty(Codes("SL-I=110"));
    }

    [Fact]
    public void No_step_across_a_standstill()
    {
        _line.Save("LM-F1=3");
        Assert.NotNull(Writing.ChangeState(_line.Desk, "lime-screw", "stopped", _line.Desk.Now, null, "op1").Record);
        _line.Later(TimeSpan.FromMinutes(20));
        Assert.NotNull(Writing.ChangeState(_line.Desk, "lime-screw", "running", _line.Desk.Now, null, "op1").Record);
        _line.Later(TimeSpan.FromMinutes(20));

        Assert.DoesNotContain("step", Codes("LM-F1=18"));
    }

    [Theory]
    [InlineData("WL-TTA=155.0", "slip.basis", "120.1 g/L Na2O if it was read in g/L NaOH")]
    [InlineData("WL-TTA=12.0", "slip.factor-10", "120.0 g/L Na2O with the decimal point one place to the right")]
    [InlineData("SL-I=9", "slip.factor-10", "90 A")]
    public void A_slip_of_unit_or_point_is_hinted_at(string reading, string code, string text)
    {
        _line.Save("WL-TTA=120.0", "SL-I=92");
        _line.Later(1);

        var slip = Assert.Single(_line.Save(reading).Findings, f => f.Code == code);
        Assert.Contains(text, slip.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_comes_back_to_what_was_usual_is_no_slip()
    {
        _line.Save("SL-F1=320");
        _line.Later(1);
        _line.Save("SL-F1=0"); // a tenth and ten times nothing are near each other
        _line.Later(1);

        Assert.DoesNotContain("slip.factor-10", Codes("SL-F1=318"));
    }

    [Fact]
    public void An_impossible_value_that_is_degF_is_refused_with_the_hint()
    {
        _line.Save("SL-T1=101.0");
        _line.Later(1);

        Assert.Contains("101.3 degC if it was read in degF", _line.RefusedOnce("SL-T1=214.4").Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_that_was_typed_is_no_slip()
    {
        _line.Save("WL-TTA=120.0");
        _line.Later(1);

        Assert.DoesNotContain("slip.basis", Codes("WL-TTA=155.0 g/L Na2O"));
    }

    [Fact]
    public void Repeats_too_many_for_the_resolution_are_found()
    {
        Lively();
        var codes = new List<bool>();
        for (var hour = 0; hour < 5; hour++)
        {
            codes.Add(Codes("LM-F1=18.44").Contains("stuck"));
            _line.Later(1);
        }

        Assert.Equal([false, false, false, true, true], codes);
    }

    [Fact]
    public void While_it_is_stuck_it_is_told_once_and_kept_with_each_reading()
    {
        Lively();

        var told = new List<string>();
        for (var hour = 0; hour < 6; hour++)
        {
            var found = _line.Save("LM-F1=18.44").Findings.SingleOrDefault(f => f.Code == "stuck");
            told.Add(found is null ? "" : found.Again is true ? "goes on" : "told");
            _line.Later(1);
        }

        Assert.Equal(["", "", "", "told", "goes on", "goes on"], told);
        Assert.Contains("6 times in a row", Assert.Single(_line.Desk.State.Findings["LM-F1"]).Finding.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void After_another_value_the_next_time_is_told_again()
    {
        Lively();
        Stand("18.44", 6);
        Lively();

        Assert.Equal(1, Stand("18.63", 6));
    }

    [Fact]
    public void Who_looks_again_within_minutes_sees_no_stuck_point()
    {
        Lively();
        for (var look = 0; look < 8; look++)
        {
            Assert.DoesNotContain("stuck", Codes("LM-F1=18.44"));
            _line.Later(TimeSpan.FromMinutes(5));
        }
    }

    /// <returns>How often it was told.</returns>
    private int Stand(string value, int hours)
    {
        var told = 0;
        for (var hour = 0; hour < hours; hour++, _line.Later(1))
        {
            told += _line.Save("LM-F1=" + value).Findings.New().Count(f => f.Code == "stuck");
        }

        return told;
    }

    private void Lively()
    {
        string[] lively = ["18.31", "18.74", "18.02", "18.55", "18.20", "18.66"];
        for (var hour = 0; hour < 30; hour++, _line.Later(1))
        {
            Assert.DoesNotContain("stuck", Codes("LM-F1=" + lively[hour % lively.Length]));
        }
    }

    [Fact]
    public void A_point_that_is_nearly_always_the_same_is_not_called_stuck()
    {
        for (var hour = 0; hour < 40; hour++)
        {
            Assert.Empty(Codes("SL-I=100"));
            _line.Later(1);
        }
    }
}
