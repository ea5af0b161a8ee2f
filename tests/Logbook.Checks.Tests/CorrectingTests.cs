using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class CorrectingTests
{
    private readonly Line _line = new();

    private Correction Correct(long target, string point, string text) =>
        Assert.IsType<Correction>(Writing.Correct(_line.Desk, target, Some.Reading(point, text), "misread", "op1").Record!.Body);

    private string Refused(long target, string point, string text, string why = "misread", string by = "op1")
    {
        var written = Writing.Correct(_line.Desk, target, Some.Reading(point, text), why, by);
        Assert.Null(written.Record);
        return Assert.Single(written.Mistakes).ToString();
    }

    [Fact]
    public void Results_and_findings_are_run_again_and_both_values_stay()
    {
        var entry = _line.Record("WL-A=29.37", "WL-B=34.33", "WL-C=36.98", "SL-I=145");
        _line.Later(1);

        var correction = Correct(entry.Seq, "WL-C", "39.68");

        Assert.Equal(entry.Seq, correction.Target);
        Assert.Equal(39.68, correction.Reading!.Value);
        Assert.Equal(Some.Morning, correction.Reading!.At);
        Assert.Equal(82.02, Assert.Single(correction.Results).Value, 0.05);
        Assert.Equal("limit.urgent-high", Assert.Single(correction.Findings).Code);
        Assert.Equal("36.98", _line.Journal.Read(entry.Seq).Select(r => r.Body).OfType<Entry>().Single().Readings[2].Typed);
        Assert.Equal(82.02, _line.Desk.State.Latest["WL-CE"].Value!.Value, 0.05);
    }

    [Fact]
    public void A_second_correction_builds_on_the_first()
    {
        var entry = _line.Record("LM-F1=18.6", "LM-CAO=80", "SL-F1=200");

        Correct(entry.Seq, "LM-CAO", "88");

        Assert.Equal(10 * 18.6 * 88 / 300, Assert.Single(Correct(entry.Seq, "SL-F1", "300").Results).Value, 1e-9);
    }

    [Fact]
    public void What_was_put_right_of_an_entry_before_stands_right_when_the_next_one_is()
    {
        _line.Save("LM-CAO=88");
        var flow = _line.Record("SL-F1=33");
        _line.Later(TimeSpan.FromMinutes(1));
        var lime = _line.Record("LM-F1=47");
        Assert.Contains(_line.Desk.State.Findings["SL-CAO"], f => f.Finding.Level == Level.Urgent); // 10 x 47 x 88 / 33 = 1253

        Correct(flow.Seq, "SL-F1", "262");
        var right = Correct(lime.Seq, "LM-F1", "19.1");

        Assert.Equal(10 * 19.1 * 88 / 262, Assert.Single(right.Results).Value, 1e-9);
        Assert.DoesNotContain(_line.Desk.State.Findings.GetValueOrDefault("SL-CAO", []), f => f.Finding.Level == Level.Urgent && f.Finding.Code.StartsWith("limit.", StringComparison.Ordinal));
    }

    [Fact]
    public void The_limits_and_inputs_are_those_of_the_day()
    {
        _line.Save("LM-CAO=88", "SL-F1=300");
        _line.Later(1);
        var entry = _line.Record("LM-F1=18.6", "SL-I=141");
        var adopting = Some.Desk(_line.Clock, _line.Journal, Some.Changed(("140,30,,slaker", "160,30,,slaker")));
        Assert.NotNull(Some.Adopt(adopting, "new motor", "eng1").Record);
        _line.Later(TimeSpan.FromMinutes(10));
        _line.Save("LM-CAO=70", "SL-F1=250", "SL-I=141");

        var correction = Correct(entry.Seq, "SL-I", "142");

        Assert.Contains(correction.Findings, f => f.Code == "limit.urgent-high" && f.Text.Contains("limit 140 A", StringComparison.Ordinal));
        Assert.Equal(10 * 18.6 * 88 / 300, correction.Results.Single(r => r.Point == "SL-CAO").Value, 1e-9);
    }

    [Fact]
    public void A_reading_may_be_taken_back()
    {
        var entry = _line.Record("SL-I=145");

        var back = Some.Reading("SL-I", "-") with { Why = "instrument faulty" };
        var correction = Assert.IsType<Correction>(Writing.Correct(_line.Desk, entry.Seq, back, "wrong gauge", "op1").Record!.Body);

        Assert.True(correction.Reading!.NotTaken);
        var trace = Assert.Single(correction.Findings);
        Assert.Equal((Level.Watch, "corrected.urgent"), (trace.Level, trace.Code));
        Assert.Contains("Slaker agitator current was 145 A, taken back by Operator one at ", trace.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void End_points_that_were_swapped_are_put_right_in_one_record_and_nothing_false_stands_between()
    {
        var entry = _line.Record("WL-A=29.37", "WL-B=36.98", "WL-C=34.33", "SL-I=145");
        _line.Later(1);

        var correction = Assert.IsType<Correction>(Writing.Correct(_line.Desk, entry.Seq, [Some.Reading("WL-B", "34.33"), Some.Reading("WL-C", "36.98")], "swapped", "op1").Record!.Body);

        Assert.Null(correction.Reading);
        Assert.Equal(["WL-B=34.33", "WL-C=36.98"], correction.Readings.Select(r => $"{r.Point}={r.Typed}"), StringComparer.Ordinal);
        Assert.Equal((34.33, 36.98), (_line.Desk.State.Latest["WL-B"].Value, _line.Desk.State.Latest["WL-C"].Value));
        Assert.Equal(_line.Journal.Head.Seq, _line.Desk.State.Latest["WL-CE"].CorrectedBy);
        Assert.DoesNotContain(_line.Desk.State.Findings.Values.SelectMany(f => f), f => f.Seq == entry.Seq);
        Assert.Equal([36.98], _line.Journal.Series("WL-C", DateTimeOffset.MinValue, DateTimeOffset.MaxValue).Select(v => v.Value));
        Assert.Contains("WL-B is given 2 times", Assert.Single(Writing.Correct(_line.Desk, entry.Seq, [Some.Reading("WL-B", "34"), Some.Reading("wl-b", "35")], "x", "op1").Mistakes).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_belongs_elsewhere_is_taken_back_counts_nowhere_and_what_stood_before_stands_again()
    {
        _line.Save("SL-I=145");
        _line.Later(1);
        var wrong = _line.Record("SL-I=100");
        Assert.DoesNotContain(_line.Desk.State.Findings.GetValueOrDefault("SL-I", []), f => f.Finding.Level == Level.Urgent);
        _line.Later(TimeSpan.FromMinutes(10));

        var correction = Correct(wrong.Seq, "SL-I", "-");

        Assert.Equal("taken back: misread", Assert.Single(correction.Readings).Why);
        Assert.Null(_line.Desk.State.Latest["SL-I"].Value);
        Assert.Equal([145, null], _line.Journal.Series("SL-I", DateTimeOffset.MinValue, DateTimeOffset.MaxValue).Select(v => v.Value));
        var again = Assert.Single(_line.Desk.State.Findings["SL-I"]).Finding;
        Assert.Equal((Level.Urgent, true), (again.Level, again.Again));
        Assert.Contains("the later value was taken back", again.Text, StringComparison.Ordinal);
        Assert.Equal("100", _line.Journal.Read(wrong.Seq).Select(r => r.Body).OfType<Entry>().Single().Readings[0].Typed);
        Assert.Contains("there is no value to take back", Refused(wrong.Seq, "SL-I", "-"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_corrected_is_said()
    {
        var entry = _line.Record("SL-I=100");
        var head = _line.Journal.Head;

        Assert.Contains("record 1 is no entry", Refused(1, "SL-I", "101"), StringComparison.Ordinal);
        Assert.Contains("record 99 is no entry", Refused(99, "SL-I", "101"), StringComparison.Ordinal);
        Assert.Contains("it has SL-I", Refused(entry.Seq, "SL-T1", "101"), StringComparison.Ordinal);
        Assert.Contains("is no number", Refused(entry.Seq, "SL-I", "much"), StringComparison.Ordinal);
        Assert.Contains("already 100", Refused(entry.Seq, "SL-I", "100"), StringComparison.Ordinal);
        Assert.Contains("the reason for correcting is empty", Refused(entry.Seq, "SL-I", "101", why: " "), StringComparison.Ordinal);
        Assert.Contains("known:", Refused(entry.Seq, "SL-I", "101", by: "op9"), StringComparison.Ordinal);
        Assert.Equal(head, _line.Journal.Head);
    }
}
