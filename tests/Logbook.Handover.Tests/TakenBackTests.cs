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
        Assert.Equal(CheckState.Missed, Check());
        Assert.Contains(Audit.Between(line.Desk, line.Desk.Now.AddHours(-2), line.Desk.Now, ["missed"]), f => f.Point == "SL-T1" && f.Text.EndsWith($": the value typed was taken back: typed into the wrong round {Say.Ref(round)}", StringComparison.Ordinal));
        line.Clock("2026-11-24T09:20-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("SL-T1=101.0")]) { Round = "hourly", At = SmallLine.At("2026-11-24T08:10-05:00") });
        Assert.Equal(CheckState.Missed, Check()); // a safety point: typed after its window
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
        Assert.DoesNotContain(line.Desk.State.Findings.GetValueOrDefault("SL-T1") ?? [], f => f.Finding.Level == Level.Urgent);
        Assert.Empty(Audit.Between(line.Desk, line.Desk.Now.AddDays(-1), line.Desk.Now.AddMinutes(1), "unanswered"));
    }

    [Fact]
    public void An_urgent_reading_that_is_put_right_is_seen_to_have_been_one_until_the_point_is_read_again()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var urgent = line.Record(null, "SL-T1=104.0");
        line.Clock("2026-11-24T08:10-05:00").Correct(urgent, "SL-T1=103.8", "misread");
        Assert.DoesNotContain(NowView.Of(line.Desk).StandsOut, f => f.Finding.Code == "corrected.urgent");
        line.Correct(urgent, "SL-T1=101.8", "misread again");
        line.Correct(urgent, "SL-T1=101.4", "and again");

        var trace = Assert.Single(NowView.Of(line.Desk).StandsOut, f => f.Finding.Point == "SL-T1").Finding;
        Assert.EndsWith(" was 103.8 degC, put right to 101.4 degC by Operator one at 08:10: and again", trace.Text, StringComparison.Ordinal);
        string Note() => string.Join('\n', HandoverNote.InHand(line.Desk).Sections.SelectMany(s => s.Lines).Select(l => l.Text));
        Assert.Contains("was 103.8 degC, put right to 101.4 degC by Operator one at 08:10", Note(), StringComparison.Ordinal);
        line.Correct(urgent, "SL-T1=-", "not read at all");
        Assert.Contains("was 103.8 degC, taken back by Operator one at 08:10: not read at all", Note(), StringComparison.Ordinal);

        line.Clock("2026-11-24T09:00-05:00").Record(null, "SL-T1=101.0");
        Assert.DoesNotContain(NowView.Of(line.Desk).StandsOut, f => f.Finding.Point == "SL-T1");
    }

    [Fact]
    public void Gas_that_was_urgent_and_is_put_right_to_watch_says_both_under_what_can_hurt()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        line.Correct(line.Record(null, "ST-H2S=19"), "ST-H2S=1.9", "comma");

        var gas = NowView.Of(line.Desk).Hazards.Where(h => h.Word == "gas").Select(h => h.Text).ToList();

        Assert.Contains(gas, text => text.Contains("1.9 ppm, 0.9 ppm above the watch limit", StringComparison.Ordinal));
        Assert.Contains(gas, text => text.Contains("was 19.0 ppm, put right to 1.9 ppm by Operator one at 08:00: comma", StringComparison.Ordinal));
    }

    [Fact]
    public void A_value_that_was_put_right_and_back_says_what_it_was_in_between()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var entry = line.Record(null, "SL-T1=101.0");
        line.Correct(entry, "SL-T1=100.0", "misread");
        var back = line.Correct(entry, "SL-T1=101.0", "it was right");

        Assert.Contains("first 101.0 degC, then 100.0 degC, put right to 101.0 degC", LogLine.Of(line.Desk, line.Desk.Store.Read(back).First()).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_put_right_to_the_value_that_stands_is_refused_though_it_was_retyped_or_remarked()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var entry = line.Record(new EntryRequest("op1", [SmallLine.Typed("SL-T1=101.0") with { Second = "101.0" }]));

        Assert.Contains("already 101.0", Assert.Single(Writing.Correct(line.Desk, entry, [SmallLine.Typed("SL-T1=101")], "misread", "op1").Mistakes).Wrong, StringComparison.Ordinal);
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

    [Fact]
    public void An_urgent_reading_that_has_its_answer_and_stays_urgent_when_it_is_corrected_is_not_asked_again()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var urgent = line.Record(null, "SL-T1=104.0");
        Assert.Empty(Writing.Answer(line.Desk, $"{urgent}.1", "lime cut, engineer told", "op1").Mistakes);
        line.Clock("2026-11-24T08:30-05:00").Record(null, "SL-T1=101.0");

        line.Correct(urgent, "SL-T1=103.8", "misread");
        Assert.Empty(line.Desk.State.Unanswered);
        line.Correct(urgent, "SL-T1=101.3", "misread again");
        line.Correct(urgent, "SL-T1=103.9", "it was urgent after all");
        Assert.Single(line.Desk.State.Unanswered);
    }

    [Fact]
    public void A_late_correction_does_not_say_that_there_was_no_later_reading()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        var wet = line.Record(null, "WT-L=90.0");
        line.Clock("2026-11-24T17:00-05:00").Record(null, "WT-L=60.0");
        line.Clock("2026-11-24T20:00-05:00").Correct(wet, "WT-L=88.0", "misread");

        Assert.DoesNotContain(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines, l => l.Label == "WT-L");
        Assert.DoesNotContain(NowView.Of(line.Desk).StandsOut, f => f.Finding.Point == "WT-L");
    }

    [Fact]
    public void What_counts_for_a_slot_of_the_next_shift_or_for_none_is_said()
    {
        using var line = new SmallLine("2026-11-24T16:00-05:00");
        var walked = line.Clock("2026-11-24T18:58-05:00").Record(new EntryRequest("op1", [SmallLine.Typed("SL-EYE=1")])
        {
            Round = "field", WalkStart = SmallLine.At("2026-11-24T18:40-05:00"), WalkEnd = SmallLine.At("2026-11-24T18:55-05:00"),
        });
        var round = line.Record("hourly", "SL-T1=101.0", "SL-L1=16.0", "WT-L=50.0");
        string? Words(long seq) => CountsFor.Words(line.Desk, line.Desk.Store.Read(seq).First());

        Assert.Equal("Field walk read 18:40 COUNTS FOR NONE: the one of 20:00 opens at 19:30", Words(walked));
        Assert.StartsWith("Line round read 18:58 counts for the one of 19:00, open ", Words(round), StringComparison.Ordinal);
        Assert.EndsWith(", of the shift 2026-11-24-N-C", Words(round), StringComparison.Ordinal);
        Assert.Null(Words(line.Record("shift", "CL-G=100")));
        var early = HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-done").Lines.Where(l => l.Label == "early").Select(l => l.Text).ToList();
        Assert.Equal([$"{Words(walked)} (#{walked})", $"{Words(round)} (#{round})"], early, StringComparer.Ordinal);
    }

    [Fact]
    public void What_is_over_keeps_the_whole_name_of_its_point()
    {
        using var line = new SmallLine("2026-11-24T08:00-05:00");
        Finding over = new(Level.Watch, "limit.watch-high", "CL-G", "Grits collected, wet 5 kg, 3 kg above the watch limit 2 kg; call", []);

        Assert.Equal("Grits collected, wet 5 kg, 3 kg above the watch limit 2 kg", FindingText.WithoutAsking(line.Desk.Site, over));
        var point = line.Desk.Site.FindPoint("CL-G")! with { Description = "Lime dosed; below zero, the room left" };
        var site = line.Desk.Site with { Points = [point] };
        Assert.Equal("Lime dosed; below zero, the room left 5 %", FindingText.WithoutAsking(site, over with { Text = "Lime dosed; below zero, the room left 5 %; less lime" }));
    }
}
