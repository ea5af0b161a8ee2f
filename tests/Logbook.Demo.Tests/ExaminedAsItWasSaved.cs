using Logbook.Checks.Examining;

namespace Logbook.Demo.Tests;

/// <summary>What was said of an entry when it was saved follows from the journal before it, whatever was typed late or put right meanwhile.</summary>
public sealed class ExaminedAsItWasSaved
{
    [Fact]
    public void What_was_told_at_the_save_is_told_again_from_the_journal_alone()
    {
        var run = DemoRun.Long(9, 1);
        var told = run.Findings.Where(f => f.Finding.Code is "examine.named" or "examine.pair" or "examine.group").Select(f => f.Record.Seq)
            .Where(seq => !run.Desk.Store.Corrections(seq, seq).Any()).ToList(); // what was put right is sound now

        Assert.NotEmpty(told);
        Assert.All(told, seq => Assert.True(Examine.Of(run.Desk, seq)!.Gate!.Open, $"entry {seq} was told at the save, and is found sound now"));
    }
}
