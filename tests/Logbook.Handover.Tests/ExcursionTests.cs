using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Handover.Tests;

/// <summary>What the note says of findings: what was done about them, what lasts before what is over, and nothing of a value that was taken back.</summary>
public sealed class ExcursionTests
{
    private static List<NoteLine> NotNormal(SmallLine line) => [.. HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines];

    private static NoteLine Of(SmallLine line, string point) => Assert.Single(NotNormal(line), l => l.Label == point);

    [Fact]
    public void The_answer_to_an_urgent_finding_stands_in_its_line_in_the_note_on_the_page_and_now()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var urgent = line.Record(null, "SL-T1=104.0");
        line.Clock("2026-11-24T20:12-05:00");
        Assert.Empty(Writing.Answer(line.Desk, $"{urgent}.1", "lime cut, everyone clear", "op2").Mistakes);
        const string Answer = "nswered 20:12 Operator two: lime cut, everyone clear.";

        Assert.Contains(Answer, Of(line, "SL-T1").Text, StringComparison.Ordinal);
        Assert.Contains(Answer, Assert.Single(NowView.Of(line.Desk).StandsOut, f => f.Finding.Point == "SL-T1").Finding.Text, StringComparison.Ordinal);
        var page = HandoverPages.Open(line.Desk, "op2", "hazards").Page!;
        Assert.Contains(page.Sections.Single(s => s.Id == "not-normal").Lines, l => l.Text.Contains(Answer, StringComparison.Ordinal));

        line.Clock("2026-11-24T21:00-05:00").Record(null, "SL-T1=101.0");
        Assert.Contains("from 21:00 without this finding", Of(line, "SL-T1").Text, StringComparison.Ordinal);
        Assert.Contains(Answer, Of(line, "SL-T1").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_stands_beside_what_a_correction_left_urgent()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        var urgent = line.Record(null, "SL-T1=104.0");
        Assert.Empty(Writing.Answer(line.Desk, $"{urgent}.1", "lime cut", "op2").Mistakes);
        line.Clock("2026-11-24T20:20-05:00").Correct(urgent, "SL-T1=103.8", "misread");

        Assert.Contains("Answered 20:00 Operator two: lime cut.", Of(line, "SL-T1").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_by_the_number_from_before_a_correction_counts_for_what_stands_since()
    {
        using var line = new SmallLine("2026-11-24T20:34-05:00");
        line.AdoptATrip();
        var entry = line.Record(null, "SL-EYE=2", "SL-TRIP=1");
        var corrected = line.Clock("2026-11-24T23:00-05:00").Correct(entry, "SL-TRIP=2", "the trip is bridged");
        var eye = Assert.Single(line.Desk.State.Unanswered, f => f.Finding.Point == "SL-EYE");
        Assert.Equal(corrected, eye.Seq);

        Assert.Empty(Writing.Answer(line.Desk, $"{entry}.1", "no flow, mechanic told", "op1").Mistakes);

        Assert.Equal(["SL-TRIP"], line.Desk.State.Unanswered.Select(f => f.Finding.Point), StringComparer.Ordinal);
        Assert.Equal("no flow, mechanic told", Assert.Single(line.Desk.State.Findings["SL-EYE"]).Answer?.Text);
    }

    [Fact]
    public void What_was_answered_in_the_shift_before_keeps_its_answer_while_it_lasts()
    {
        using var line = new SmallLine("2026-11-24T18:00-05:00");
        var urgent = line.Record(null, "SL-T1=104.0");
        Assert.Empty(Writing.Answer(line.Desk, $"{urgent}.1", "lime cut", "op2").Mistakes);
        line.Clock("2026-11-24T20:00-05:00");

        Assert.Contains("Answered 18:00 Operator two: lime cut.", Of(line, "SL-T1").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_lasts_stands_before_what_is_over_of_the_same_point()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Record(null, "SL-T1=104.0");
        line.Clock("2026-11-24T21:00-05:00").Record(null, "SL-T1=101.0");
        line.Clock("2026-11-24T22:00-05:00").Record(null, "SL-T1=103.6");

        var told = NotNormal(line).FindAll(l => l.Label == "SL-T1");

        Assert.Equal(2, told.Count);
        Assert.Contains("103.6 degC", told[0].Text, StringComparison.Ordinal);
        Assert.Contains("104.0 degC", told[1].Text, StringComparison.Ordinal);
        Assert.Contains("from 21:00 without this finding, now: see above.", told[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_over_stands_below_all_that_lasts_and_says_of_a_point_that_is_told_above_only_that()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Record(null, "SL-T1=97.0", "WT-L=90.0");
        line.Clock("2026-11-24T21:00-05:00").Record(null, "SL-T1=101.0", "WT-L=60.0");
        line.Clock("2026-11-24T22:00-05:00").Record(null, "SL-T1=102.8");

        var told = NotNormal(line);

        Assert.Equal(["SL-T1", "over"], told.Select(l => l.Label), StringComparer.Ordinal);
        Assert.Contains("97.0 degC at 20:00, now: see above (#2)", told[1].Text, StringComparison.Ordinal);
        Assert.Contains("90.0 % at 20:00, now 60.0 % (#2)", told[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_urgent_and_is_to_watch_now_says_so_and_asks_for_nothing_of_then()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Record(null, "WT-L=10.0");
        line.Clock("2026-11-24T21:00-05:00").Record(null, "WT-L=25.0");

        var text = Assert.Single(NotNormal(line)).Text;

        Assert.StartsWith("WAS URGENT, NOW WATCH: White liquor tank level 10.0 %", text, StringComparison.Ordinal);
        Assert.Contains("25.0 % at 21:00", text, StringComparison.Ordinal);
        Assert.DoesNotContain("procedure", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_what_is_to_watch_that_which_can_hurt_stands_first_though_it_came_last()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.AdoptMorePoints();
        line.Record(null, "WT-L=90.0");
        line.Clock("2026-11-24T21:00-05:00").Record(null, "SL-M=1.4");

        Assert.Equal(["SL-M", "WT-L"], NotNormal(line).Select(l => l.Label), StringComparer.Ordinal);
    }

    [Fact]
    public void What_was_urgent_in_the_last_two_hours_stands_before_what_is_to_watch_and_the_slaker_takes_longer()
    {
        using var line = new SmallLine("2026-11-24T19:30-05:00");
        line.Record(null, "ST-H2S=6", "SL-T1=103.9");
        line.Clock("2026-11-24T21:00-05:00").Record(null, "ST-H2S=0.2", "SL-T1=101.0", "WT-L=90.0");
        line.Clock("2026-11-24T21:20-05:00").Record(null, "SL-T1=104.0");
        line.Clock("2026-11-24T21:40-05:00").Record(null, "WT-L=10.0");
        line.Clock("2026-11-24T22:00-05:00").Record(null, "SL-T1=101.0", "WT-L=90.0");

        Assert.Equal(
            ["SL-T1, URGENT", "WT-L, URGENT", "WT-L, WATCH", "SL-T1, URGENT"], // the slaker can hurt people first
            NotNormal(line).Select(l => $"{l.Label}, {l.Text.Split(':')[0]}"), StringComparer.Ordinal);
        Assert.Equal(["Slaker temperature urgent at 21:20"], HandoverNote.InHand(line.Desk).TakeLonger, StringComparer.Ordinal);

        line.Clock("2026-11-24T23:30-05:00");
        Assert.Empty(HandoverNote.InHand(line.Desk).TakeLonger);
        Assert.Equal("WT-L, URGENT", NotNormal(line).Select(l => $"{l.Label}, {l.Text.Split(':')[0]}").First(l => !l.Contains("WATCH", StringComparison.Ordinal)), StringComparer.Ordinal);
    }

    [Fact]
    public void A_value_that_was_taken_back_is_in_no_run_and_no_count()
    {
        using var line = new SmallLine("2026-11-24T19:10-05:00");
        line.Record(null, "WT-L=90.0");
        var second = line.Clock("2026-11-24T20:10-05:00").Record(null, "WT-L=90.0");
        var third = line.Clock("2026-11-24T21:10-05:00").Record(null, "WT-L=90.0");

        line.Correct(third, "WT-L=-", "typed into the wrong row");

        var text = Of(line, "WT-L").Text;
        Assert.Contains("2 times from 19:10 to 20:10", text, StringComparison.Ordinal);
        Assert.DoesNotContain("taken back", text, StringComparison.Ordinal);
        Assert.DoesNotContain($"#{third}", text, StringComparison.Ordinal);
        Assert.Contains($"#{second})", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_with_its_tag_behind_it_is_said_by_the_tag_once()
    {
        using var line = new SmallLine(SmallLine.At("2026-11-24T20:00-05:00"), Some.Files, Some.Calculations);
        var description = line.Desk.Site.FindPoint("WL-B")!.Description;
        foreach (var (at, found) in new[] { ("20:00", true), ("21:00", false) })
        {
            var entry = RecordEntry.Judge(line.Clock($"2026-11-24T{at}-05:00").Desk, new EntryRequest("op1", [SmallLine.Typed("WL-B=34.35"), SmallLine.Typed("SL-T1=99.0")])).Value!;
            line.Desk.Write(entry with
            {
                Findings = found ? [new Finding(Level.Watch, "examine.named", "WL-B", $"{description} (WL-B) 34.35 mL does not fit.", []), new Finding(Level.Watch, "examine.named", "SL-T1", "Slaker temperature (SL-T1) does not fit.", [])] : [],
            }, line.Desk.Now, "op1");
        }

        var over = HandoverPages.Open(line.Desk, "op1", "hazards").Page!.Sections.Single(s => s.Id == "not-normal").Lines.Single(l => l.Label == "over").Text;

        Assert.Contains("WL-B 34.35 mL does not fit", over, StringComparison.Ordinal);
        Assert.DoesNotContain("(WL-B)", over, StringComparison.Ordinal);
    }
}
