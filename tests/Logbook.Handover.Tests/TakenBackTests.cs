using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>What becomes of a value that is taken back, or put right: its check, its answer, and what is known of its point.</summary>
public sealed class TakenBackTests
{
    [Fact]
    public void A_value_that_is_taken_back_makes_no_check()
    {
        using var line = new SmallLine("2026-11-24T07:30-05:00");
        var round = line.Clock("2026-11-24T08:00-05:00").Record("hourly", "SL-T1=101.2", "SL-L1=16.0", "WT-L=50.0");
        line.Correct(round, "SL-T1=-", "typed into the wrong round");
        CheckState Check() => line.Due("2026-11-24T08:00-05:00", "2026-11-24T08:01-05:00").Single(c => c is { Round: "hourly", Point: "SL-T1" }).State;

        Assert.Equal(CheckState.Due, Check());
        Assert.Equal(2, NowView.Of(line.Desk).Rounds.Single(r => r is { Round: "hourly", State: CheckState.Due }).Done);
        line.Clock("2026-11-24T08:40-05:00");
        Assert.Equal(CheckState.NotTaken, Check());
        line.Clock("2026-11-24T09:20-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("SL-T1=101.0")]) { Round = "hourly", At = SmallLine.At("2026-11-24T08:10-05:00") });
        Assert.Equal(CheckState.Late, Check());
    }

    [Fact]
    public void Now_and_the_note_show_the_last_value_that_stands_with_its_time()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Record(null, "WT-L=60.0");
        var wrong = line.Clock("2026-11-24T09:00-05:00").Record(null, "WT-L=6.0");
        line.Correct(wrong, "WT-L=-", "not read");

        var stock = NowView.Of(line.Desk).Stocks.Single(s => s.Point == "WT-L");

        Assert.Equal(("60.0 %", SmallLine.At("2026-11-24T08:00-05:00")), (stock.Value, stock.At));
        Assert.Contains(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "stocks").Lines, l => l.Text.Contains("60.0 % at 08:00", StringComparison.Ordinal));
    }

    [Fact]
    public void An_urgent_reading_that_is_put_right_asks_for_no_answer_however_often_it_is_corrected()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var urgent = line.Record(null, "SL-T1=104.0");
        Assert.Single(line.Desk.State.Unanswered);

        line.Correct(urgent, "SL-T1=103.8", "misread");
        Assert.Single(line.Desk.State.Unanswered);
        line.Correct(urgent, "SL-T1=101.8", "misread again");

        Assert.Empty(line.Desk.State.Unanswered);
        Assert.Empty(line.Desk.State.Findings.GetValueOrDefault("SL-T1") ?? []);
        Assert.Empty(Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), "unanswered"));
    }

    [Fact]
    public void Where_a_later_reading_bears_the_excursion_out_that_one_waits_for_its_answer()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var first = line.Record(null, "SL-T1=104.0");
        var second = line.Clock("2026-11-24T08:05-05:00").Record(null, "SL-T1=103.9");

        line.Correct(first, "SL-T1=101.8", "misread");

        Assert.Equal(second, Assert.Single(line.Desk.State.Unanswered).Seq);
    }

    [Fact]
    public void What_stands_again_after_a_value_was_taken_back_keeps_the_answer_that_it_had()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var urgent = line.Record(null, "SL-T1=104.0");
        Assert.Empty(Writing.Answer(line.Desk, $"{urgent}.1", "lime cut, engineer told", "op1").Mistakes);
        var later = line.Clock("2026-11-24T08:30-05:00").Record(null, "SL-T1=101.0");

        line.Correct(later, "SL-T1=-", "typed for another day");

        Assert.Empty(line.Desk.State.Unanswered);
        Assert.Contains(NowView.Of(line.Desk).StandsOut, f => f.Finding.Point == "SL-T1");
    }
}
