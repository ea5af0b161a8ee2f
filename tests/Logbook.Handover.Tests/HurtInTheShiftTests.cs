using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Handover.Tests;

/// <summary>Who was hurt, what got out, gas that came and went: in that shift it is never said that none is recorded.</summary>
public sealed class HurtInTheShiftTests
{
    private static List<NoteLine> CanHurt(SmallLine line) => [.. HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "can-hurt").Lines];

    private static string None(SmallLine line) => CanHurt(line)[^1].Text;

    [Fact]
    public void Gas_that_has_cleared_stands_with_its_worst_and_since_when_it_is_without_once()
    {
        using var line = new SmallLine("2026-11-24T20:34-05:00");
        line.Record(null, "ST-H2S=0.4");
        line.Clock("2026-11-24T22:52-05:00").Record(null, "ST-H2S=12.4");
        line.Clock("2026-11-24T22:56-05:00").Record(null, "ST-H2S=0.7");

        var gas = Assert.Single(CanHurt(line), l => l.Label == "gas").Text;

        Assert.StartsWith("over: H2S at the sump 12.4 ppm", gas, StringComparison.Ordinal);
        Assert.Contains("At 22:52; from 22:56 without this finding, 0.7 ppm at 22:56.", gas, StringComparison.Ordinal);
        Assert.DoesNotContain("gas", None(line), StringComparison.Ordinal);
        Assert.DoesNotContain(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines, l => l.Text.Contains("H2S", StringComparison.Ordinal));
        Assert.Equal(["H2S at the sump urgent at 22:52"], HandoverNote.InHand(line.Desk).TakeLonger, StringComparer.Ordinal);

        line.Clock("2026-11-25T08:00-05:00");
        Assert.Contains("gas", HandoverNote.Of(line.Desk, line.Desk.Now).Sections[0].Lines[^1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Gas_that_falls_to_watch_tells_when_it_began_and_that_it_was_urgent()
    {
        using var line = new SmallLine("2026-11-24T20:34-05:00");
        line.AdoptMorePoints();
        line.Record(null, "ST-H2S=0.4");
        line.Carry("permit", "slaker", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("inside", "2"));
        var begun = line.Clock("2026-11-24T21:10-05:00").Record(null, "ST-H2S=1.5");
        var worst = line.Clock("2026-11-24T21:20-05:00").Record(null, "ST-H2S=12.4");
        var now = line.Clock("2026-11-24T21:40-05:00").Record(null, "ST-H2S=2.2");
        HazardLine Of(string word) => Assert.Single(NowView.Of(line.Desk).Hazards, h => h.Word == word);

        Assert.Contains($"Read 21:40 (#{now}); beyond its limits since 21:10 (#{begun}), URGENT before.", Of("gas").Text, StringComparison.Ordinal);
        Assert.Contains($" GAS: H2S at the sump since 21:10, URGENT before (#{begun}, #{now}); an entry goes by", Of("inside").Text, StringComparison.Ordinal);

        // The newest put right goes on with the begin; the first put right, it began later than was thought.
        line.Correct(now, "ST-H2S=2.3", "misread");
        Assert.Contains($"; beyond its limits since 21:10 (#{begun}), URGENT before.", Of("gas").Text, StringComparison.Ordinal);
        line.Correct(begun, "ST-H2S=0.5", "comma");
        Assert.Contains($"; beyond its limits since 21:20 (#{worst}), URGENT before.", Of("gas").Text, StringComparison.Ordinal);

        // What is entered late for an earlier time counts there.
        line.Record(new EntryRequest("op1", [Testing.Some.Reading("ST-H2S", "1.8")]) { At = SmallLine.At("2026-11-24T21:15-05:00") });
        Assert.Contains("; beyond its limits since 21:15 (#", Of("gas").Text, StringComparison.Ordinal);

        line.Clock("2026-11-24T21:50-05:00").Record(null, "ST-H2S=0.3");
        line.Clock("2026-11-24T22:00-05:00").Record(null, "ST-H2S=1.5");
        Assert.DoesNotContain("since", Of("gas").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Gas_that_fell_from_a_mistyped_value_is_no_gas_and_says_what_was_put_right()
    {
        using var line = new SmallLine("2026-11-24T20:34-05:00");
        line.AdoptGasStep();
        line.Record(null, "ST-H2S=0.4");
        line.Carry("permit", "slaker", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("inside", "2"));
        var mistyped = line.Clock("2026-11-24T22:52-05:00").Record(null, "ST-H2S=6.3");
        line.Clock("2026-11-24T22:53-05:00").Record(null, "ST-H2S=0.3");
        Assert.Contains(line.Desk.State.Findings["ST-H2S"], f => f.Finding.Code == "step");

        var right = line.Correct(mistyped, "ST-H2S=0.3", "a slip of the key");

        Assert.DoesNotContain(NowView.Of(line.Desk).Hazards, h => h.Word == "gas" || h.Text.Contains("GAS", StringComparison.Ordinal));
        var odd = Assert.Single(HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "not-normal").Lines, l => l.Text.Contains("changed by", StringComparison.Ordinal));
        Assert.Contains($"One of them was put right since (#{right})", odd.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void One_head_that_is_clear_again_says_which_others_nobody_has_read_since()
    {
        using var line = new SmallLine("2026-11-24T20:34-05:00");
        line.AdoptMorePoints();
        line.Record(null, "ST-H2S=0.4", "FI-H2S=0.1");
        line.Clock("2026-11-24T22:52-05:00").Record(null, "ST-H2S=12.4");
        line.Clock("2026-11-24T22:56-05:00").Record(null, "ST-H2S=0.7");
        string Gas() => Assert.Single(CanHurt(line), l => l.Label == "gas").Text;
        Assert.EndsWith(" NOT READ since it began: H2S at the filters (FI-H2S), last 20:34.", Gas(), StringComparison.Ordinal);

        line.Clock("2026-11-24T23:10-05:00").Record(null, "FI-H2S=0.0");
        Assert.DoesNotContain("NOT READ", Gas(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SL-L=34.0", "Slaker level (SL-L) 34.0 %")]
    [InlineData("SL-L=4.0", null)] // below the level at which it works
    [InlineData("SL-TQ=12", "Rake torque of the slaker (SL-TQ) 12 %")]
    [InlineData("SL-TQ=0", null)]
    [InlineData("SL-T1=60.0", null)]
    public void A_vessel_with_people_in_it_that_is_read_full_or_turning_says_so(string reading, string? said)
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.AdoptMorePoints();
        line.Record(null, "SL-L=55.0", "SL-TQ=20"); // before anybody went in
        line.Clock("2026-11-24T20:30-05:00").Carry("permit", "slaker", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("inside", "2"));
        string Inside() => Assert.Single(NowView.Of(line.Desk).Hazards, h => h.Word == "inside").Text;
        Assert.DoesNotContain("YET READ", Inside(), StringComparison.Ordinal);

        var read = line.Clock("2026-11-24T21:00-05:00").Record(null, reading);

        if (said is null)
        {
            Assert.DoesNotContain("YET READ", Inside(), StringComparison.Ordinal);
        }
        else
        {
            Assert.Contains($" YET READ: {said} at 21:00 Operator one (#{read}): one of the two is not true; go by the attendant and the lock board at once.", Inside(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_was_urgent_stands_on_Now_until_somebody_has_said_why_and_the_answer_in_the_note_of_the_shift_that_gave_it()
    {
        using var line = new SmallLine("2026-11-24T20:34-05:00");
        var gas = line.Record(null, "ST-H2S=12.4");
        line.Clock("2026-11-24T21:00-05:00").Record(null, "ST-H2S=0.2");
        line.Clock("2026-11-25T07:30-05:00");
        Assert.Equal([$"ST-H2S urgent 20:34: cause, who was told? Answer {gas}.1"], NowView.Of(line.Desk).ToAnswer.Select(l => l.Text), StringComparer.Ordinal);

        var answer = Writing.Answer(line.Desk, $"{gas}.1", "seal of the sump pump; recovery told", "op1").Record!.Seq;

        Assert.Empty(NowView.Of(line.Desk).ToAnswer);
        var written = HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "remarks").Lines;
        Assert.Contains(written, l => l.Text.Contains("seal of the sump pump; recovery told", StringComparison.Ordinal) && l.Text.EndsWith($"(#{answer})", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_urgent_and_is_to_watch_is_not_told_as_over_to_who_was_away()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.AdoptMorePoints();
        line.Record(null, "SL-M=0.6");
        line.Clock("2026-11-24T21:00-05:00").Record(null, "SL-M=1.4");
        string Told() => string.Join('\n', Since.Of(line.Desk, "op3").Changes.Where(c => c.Text.StartsWith("SL-M", StringComparison.Ordinal)).Select(c => c.Text));

        Assert.Contains("; now within 2 K of boiling: 1.4 K left", Told(), StringComparison.Ordinal);
        Assert.DoesNotContain("over since", Told(), StringComparison.Ordinal);
        Assert.Contains(", NOW WATCH: within 2 K", Assert.Single(Since.Section(line.Desk, "op3").Lines, l => l.Label == "was urgent").Text, StringComparison.Ordinal);

        line.Clock("2026-11-24T22:00-05:00").Record(null, "SL-M=5.0");
        Assert.Contains("over since", Told(), StringComparison.Ordinal);
    }

    [Fact]
    public void One_gas_alarm_is_one_hazard_though_the_gas_jumped()
    {
        using var line = new SmallLine("2026-11-24T20:34-05:00");
        line.AdoptGasStep();
        line.Record(null, "ST-H2S=0.4");
        var alarm = line.Clock("2026-11-24T22:52-05:00").Record(null, "ST-H2S=12.4");
        Assert.Equal(["limit.urgent-high", "step"], line.Desk.State.Findings["ST-H2S"].Where(f => f.Seq == alarm).Select(f => f.Finding.Code).Order(StringComparer.Ordinal), StringComparer.Ordinal);

        var gas = Assert.Single(NowView.Of(line.Desk).Hazards);
        Assert.Contains("12.4 ppm, 7.4 ppm above", gas.Text, StringComparison.Ordinal);
        Assert.Equal(NowView.Of(line.Desk).StandsOut, gas.Findings); // neither is told beside it
    }

    [Fact]
    public void A_permit_of_somebody_who_is_hurt_says_so_and_where_they_were_is_asked_anew_after_an_hour()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("entry", "no"));
        string Line(string word) => Assert.Single(NowView.Of(line.Desk).Hazards, h => h.Word == word).Text;
        Assert.DoesNotContain("HURT", Line("permit"), StringComparison.Ordinal);

        var hurt = line.Carry("injury", "wl-filter", "caustic in the left eye", null, ("who", "op1"), ("now", "at the shower, rinsing"));
        Assert.Contains($" Operator one, WHOSE IT IS, IS RECORDED AS HURT (#{hurt}): who holds it now?", Line("permit"), StringComparison.Ordinal);
        Assert.DoesNotContain("ask where", Line("injury"), StringComparison.Ordinal);

        line.Clock("2026-11-24T21:30-05:00");
        Assert.Contains(" That was told at 20:00: ask where they are now.", Line("injury"), StringComparison.Ordinal);

        line.Close(hurt, "in hospital, arm and eye");
        Assert.Contains("WHOSE IT IS, IS RECORDED AS HURT", Line("permit"), StringComparison.Ordinal);
        var permit = line.Desk.State.Carried.Single().Id;
        Assert.NotNull(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(permit, true, null, new Dictionary<string, string>(StringComparer.Ordinal), null) { Owner = "sup1" }, "sup1").Record);
        Assert.DoesNotContain("HURT", Line("permit"), StringComparison.Ordinal);
    }

    [Fact]
    public void Words_of_an_injury_that_is_recorded_already_are_no_second_reason_to_take_longer()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("injury", "wl-filter", "caustic in the left eye", null, ("who", "op2"), ("now", "at the shower"));
        var words = line.Clock("2026-11-24T21:00-05:00").Remark("rounds missed, field man hurt, alone at the panel");

        Assert.DoesNotContain(HandoverNote.InHand(line.Desk).TakeLonger, r => r.StartsWith("injury, told", StringComparison.Ordinal));
        Assert.Contains(CanHurt(line), l => l.Label == "injury" && l.Text.EndsWith($"(#{words}) It may speak of who is recorded as hurt already.", StringComparison.Ordinal));
    }

    [Fact]
    public void Gas_while_people_may_be_inside_stands_in_the_line_of_the_entry()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.Carry("permit", "mud-pump", "inspection", line.Desk.Now.AddHours(8), ("number", "4421"), ("inside", "2"));
        var gas = line.Clock("2026-11-24T21:00-05:00").Record(null, "ST-H2S=12.4");
        string Inside() => Assert.Single(NowView.Of(line.Desk).Hazards, h => h.Word == "inside").Text;
        Assert.Contains($" GAS: H2S at the sump since 21:00, URGENT (#{gas}); treat it as true: leave, warn others, and follow the site's gas procedure now.", Inside(), StringComparison.Ordinal);

        line.Clock("2026-11-24T21:30-05:00").Record(null, "ST-H2S=0.3");
        Assert.Contains($" There was GAS: H2S at the sump 21:00, and nobody has said why or who was told ({gas}.1).", Inside(), StringComparison.Ordinal);

        Assert.NotNull(Writing.Answer(line.Desk, $"{gas}.1", "flange of the sump pump; everybody told", "op1").Record);
        Assert.DoesNotContain("GAS", Inside(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_leak_that_runs_is_a_release_and_says_its_newest_value_in_words_once_it_is_less()
    {
        using var line = new SmallLine("2026-11-24T20:00-05:00");
        line.AdoptLeaks();
        line.Clock("2026-11-24T22:52-05:00").Record(null, "CA-LEAK=3");
        Assert.Equal("release", Assert.Single(NowView.Of(line.Desk).Hazards).Word);

        line.Clock("2026-11-24T22:56-05:00").Record(null, "CA-LEAK=2");

        Assert.Empty(NowView.Of(line.Desk).Hazards);
        var release = Assert.Single(CanHurt(line), l => l.Label == "release").Text;
        Assert.StartsWith("was: Leaks at causticizers and launders: running or spraying. At 22:52; weeping at 22:56, no later reading.", release, StringComparison.Ordinal);
        Assert.DoesNotContain("release", None(line), StringComparison.Ordinal);
        Assert.Contains("Leaks at causticizers and launders urgent at 22:52", HandoverNote.InHand(line.Desk).TakeLonger, StringComparer.Ordinal);
    }

    [Fact]
    public void Who_was_hurt_stands_in_now_in_the_note_and_in_take_longer_with_first_aid_and_where_they_are()
    {
        using var line = new SmallLine("2026-11-24T22:50-05:00");
        var hurt = line.Carry("injury", "wl-filter", "caustic in the left eye at the launder", null, ("who", "op2"));

        var now = Assert.Single(NowView.Of(line.Desk).Hazards);
        Assert.Equal("injury", now.Word);
        Assert.StartsWith("Operator two, White liquor filter: caustic in the left eye at the launder. Nothing is recorded of where they are now.", now.Text, StringComparison.Ordinal);
        Assert.Contains("water only", now.Text, StringComparison.Ordinal);
        Assert.Contains("injury: Operator two", HandoverNote.InHand(line.Desk).TakeLonger, StringComparer.Ordinal);
        Assert.Equal("injury", CanHurt(line)[0].Label);
        Assert.DoesNotContain("injury", None(line), StringComparison.Ordinal);

        Assert.Empty(Writing.ConfirmCarried(line.Desk, new CarryConfirmed(hurt, true, null, new Dictionary<string, string>(StringComparer.Ordinal) { ["now"] = "first aid room, ambulance called" }, null), "op1").Mistakes);
        Assert.Contains("; now first aid room, ambulance called", Assert.Single(NowView.Of(line.Desk).Hazards).Text, StringComparison.Ordinal);

        line.Close(hurt, "in hospital; report written");
        Assert.Equal("injury", CanHurt(line)[0].Label);
        Assert.DoesNotContain("injury", None(line), StringComparison.Ordinal);
    }

    [Fact]
    public void An_injury_needs_who_was_hurt_and_a_release_only_its_words()
    {
        using var line = new SmallLine("2026-11-24T22:50-05:00");

        var wrong = Writing.AddCarried(line.Desk, new Carry("injury", "wl-filter", "caustic in an eye", null, null, new Dictionary<string, string>(StringComparer.Ordinal)), "op1").Mistakes;

        Assert.Equal("an injury needs 'who'", Assert.Single(wrong).Wrong);
        line.Carry("release", "wl-filter", "white liquor over the launder, about 300 L to the sump");
        Assert.Equal("release", Assert.Single(NowView.Of(line.Desk).Hazards).Word);
        Assert.Contains("release: White liquor filter", HandoverNote.InHand(line.Desk).TakeLonger, StringComparer.Ordinal);
    }

    [Fact]
    public void A_remark_that_tells_of_an_injury_stands_under_what_can_hurt_and_not_again_below()
    {
        using var line = new SmallLine("2026-11-24T22:52-05:00");
        var remark = line.Remark("INJURY: caustic in an eye, rinsed with water, ambulance called", "wl-filter");

        Assert.Contains($"White liquor filter: INJURY: caustic in an eye, rinsed with water, ambulance called. Operator one 22:52 (#{remark})", Assert.Single(CanHurt(line), l => l.Label == "injury").Text, StringComparison.Ordinal);
        Assert.DoesNotContain("injury", None(line), StringComparison.Ordinal);
        Assert.Equal("nothing recorded", HandoverNote.InHand(line.Desk).Sections.Single(s => s.Id == "remarks").Lines[0].Text);
        Assert.Equal(["injury, told 22:52"], HandoverNote.InHand(line.Desk).TakeLonger, StringComparer.Ordinal);
    }
}
