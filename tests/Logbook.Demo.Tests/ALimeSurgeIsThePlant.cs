using Logbook.Checks.Examining;
using Logbook.Journal;

namespace Logbook.Demo.Tests;

/// <summary>
/// Lime comes in a surge, is cut, and comes back: the plant truly moved. For as long as that comes through no sound instrument
/// may be blamed, and what is wrong all the same is found.
/// </summary>
public sealed class ALimeSurgeIsThePlant
{
    [Theory, InlineData(1), InlineData(2)]
    public void From_the_surge_to_the_end_nothing_is_blamed_but_the_titration_that_was_misread(int seed)
    {
        var run = DemoRun.Long(9, seed);
        var surge = run.Event("near-boil-over").At.AddMinutes(-25);
        var misread = run.Event("titration-error");

        var blamed = run.Findings.Where(f => f.Record.At >= surge && f.Finding.Level >= Level.Watch && f.Finding.Code.StartsWith("examine.", StringComparison.Ordinal)).ToList();

        var one = Assert.Single(blamed);
        Assert.Equal((misread.Seq, "WL-B"), (one.Record.Seq, one.Finding.Point));
        Assert.Contains("Computed from it, and beyond", one.Finding.Text, StringComparison.Ordinal);
    }

    [Theory, InlineData(1), InlineData(2)]
    public void Weigher_and_screw_bear_each_other_out_and_what_follows_them_waits(int seed)
    {
        var run = DemoRun.Long(9, seed);
        var surge = run.Event("near-boil-over");
        var after = run.Records.Where(r => r.At > surge.At && r.Body is Entry e && e.Readings.Any(x => x.Point == "LM-N1"))
            .Select(r => Examine.Of(run.Desk, r.Seq)!).ToList();

        Assert.Contains(after, r => r.Waiting is { } waiting && waiting.Contains("LM-F1 and LM-N1", StringComparison.Ordinal));
        Assert.Contains(after, r => r.Compared.Any(c => c.Other == "SL-CAOT" && c.Surprise is null && c.Until > r.At));
        Assert.Contains(after, r => r.Compared.Any(c => c.Other == "SL-CAOS" && c.Surprise is not null)); // the two go on being compared
    }

    [Theory, InlineData(1), InlineData(2)]
    public void Two_steps_that_bear_each_other_out_are_one_finding(int seed)
    {
        var run = DemoRun.Long(9, seed);
        var surge = run.Event("near-boil-over").At;

        var steps = run.Findings.Where(f => f.Record.At > surge && f.Finding.Code == "step" && f.Finding.Point is "LM-F1" or "LM-N1").ToList();

        Assert.Contains(steps, s => s.Finding.Text.EndsWith("so the plant was moved", StringComparison.Ordinal));
        Assert.All(steps.GroupBy(s => s.Record.Seq), s => Assert.Single(s));
    }

    [Theory, InlineData(1), InlineData(2)]
    public void No_shift_is_asked_for_more_than_its_budget(int seed)
    {
        var run = DemoRun.Long(9, seed);

        Assert.All(Replaying.Of(run.Desk, run.Until.AddDays(-4), run.Until).Shifts, s => Assert.False(s.OverBudget, $"{s.Shift}: {s.Demands} demands"));
    }
}
