using Logbook.Journal;

namespace Logbook.Screens.Tests;

public sealed class RoundTests
{
    [Fact]
    public void A_round_typed_to_its_end_is_one_entry()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎302⏎18.95⏎88.1⏎");
        Assert.Empty(terminal.Entries);
        Assert.Contains("Enter saves the round", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎");

        var entry = Assert.Single(terminal.Entries);
        Assert.Equal("hourly", entry.Round);
        Assert.Equal("SL-T1=99.8 SL-F1=302 LM-F1=18.95 LM-CAO=88.1", terminal.Typed);
        Assert.IsType<NowPage>(terminal.State.Top);
        Assert.Contains("4 readings", terminal.Screen, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(terminal.Folder));
    }

    [Fact]
    public void Nothing_but_Enter_takes_a_value_and_nothing_half_typed_is_lost()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⎋");
        Assert.Equal("99.8", terminal.Round.Field);
        Assert.Contains("99.8 is not taken yet", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("↓");
        Assert.Equal(0, terminal.Round.Current);
        terminal.Press("⏎⎋");

        Assert.Equal("SL-T1=99.8", terminal.Typed);
    }

    [Fact]
    public void Leaving_a_round_saves_what_is_typed()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎302⏎⎋");

        Assert.Equal("SL-T1=99.8 SL-F1=302", terminal.Typed);
        Assert.Null(terminal.State.Draft);
        terminal.Open("Line round");
        Assert.Equal(2, terminal.Round.Current);
        Assert.Contains(" 2 open", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Enter_on_an_empty_field_leaves_its_row_open()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("⏎302⏎⎋");

        Assert.Equal("SL-F1=302", terminal.Typed);
    }

    [Fact]
    public void The_value_before_shows_only_when_the_new_one_is_given()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99");
        Assert.DoesNotContain("99.6", terminal.Screen, StringComparison.Ordinal);
        terminal.Press(".8⏎");

        Assert.Contains("99.8 degC, up 0.2; before 99.6 degC at 08:02", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_taken_stands_there_again_though_its_equipment_rests()
    {
        using var terminal = new Terminal(before: t => Assert.NotNull(Checks.Writing.ChangeState(t.Desk, "lime-screw", "stopped", null, null, "op1").Record));

        terminal.Open("Line round").Press("99.8⏎↓↑n3⏎⎋⎋").Open("Line round");

        Assert.Equal("99.8 (open) - (open)", string.Join(' ', terminal.Round.Rows.Select(r => r.Text ?? "(open)")));
        Assert.Contains("not taken: equipment down", terminal.Size(120, 40).Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void On_a_tiny_screen_the_row_that_is_typed_is_still_seen()
    {
        using var terminal = new Terminal(before: t => t.Carry("safety-equipment", "slaker", "no flow"));

        Assert.Contains("\n > SL-T1", terminal.Size(40, 9).Open("Line round").Press("99").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_limits_speak_at_each_key_in_words_and_difference()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("⏎34");
        Assert.DoesNotContain("watch:", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("8");

        Assert.Contains("watch: 8 m3/h above the watch limit 340 m3/h", terminal.Size(120, 40).Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void What_compares_with_earlier_values_stays_silent_until_Enter()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("85.0");
        Assert.DoesNotContain("changed by", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎↑");

        Assert.Contains("changed by", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_that_cannot_be_is_refused_says_why_and_stays()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("1034⏎");

        Assert.Equal("1034", terminal.Round.Field);
        Assert.Equal(0, terminal.Round.Current);
        Assert.Contains("1034.0 degC is not possible", terminal.Screen, StringComparison.Ordinal);
        Assert.Null(terminal.State.Draft);
    }

    [Fact]
    public void A_value_beyond_what_is_possible_stands_with_a_reason()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("⏎900⏎").Press("k⏎");
        Assert.Contains("without a reason", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("meter over range⏎⎋");

        var reading = Assert.Single(Assert.Single(terminal.Entries).Readings);
        Assert.Equal(("900", "meter over range"), (reading.Typed, reading.Why));
    }

    [Fact]
    public void A_number_that_could_be_read_in_two_ways_is_refused()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("⏎1,302⏎");

        Assert.Equal("1,302", terminal.Round.Field);
        Assert.Contains("could mean thousands or decimals", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_typed_again_keeps_what_was_typed_first()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("98.9⏎↑99.8⏎⎋");

        var reading = Assert.Single(Assert.Single(terminal.Entries).Readings);
        Assert.Equal(("99.8", "98.9"), (reading.Typed, reading.Retyped));
    }

    [Fact]
    public void What_is_typed_behind_the_last_row_changes_no_row_and_does_not_leave()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎302⏎18.95⏎88.1⏎77⏎66⏎");

        Assert.Equal("88.1", terminal.Round.Rows[3].Text);
        Assert.Contains("no row is left for 7766", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⌦⏎");
        Assert.Equal("SL-T1=99.8 SL-F1=302 LM-F1=18.95 LM-CAO=88.1", terminal.Typed);
    }

    [Fact]
    public void A_reading_that_is_saved_is_never_changed_a_second_one_stands_beside_it()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("103.4⏎↑100.4⏎");
        Assert.Contains("STAYS: if mistyped, put it right in the log: c", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⎋");

        Assert.Equal("SL-T1=103.4 SL-T1=100.4", terminal.Typed);
    }

    [Fact]
    public void An_urgent_value_typed_again_is_told_at_once_that_the_first_one_stays()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("103.4⏎↑103.9⏎");

        Assert.Equal("SL-T1=103.4 SL-T1=103.9", terminal.Typed);
        Assert.Contains("; SL-T1 103.4 (#", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("STAYS: if mistyped, put it right in the log: c", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Backspace_takes_one_character_back_and_Delete_all()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⌫9");
        Assert.Equal("99.9", terminal.Round.Field);
        terminal.Press("⌦");

        Assert.Equal("", terminal.Round.Field);
    }

    [Fact]
    public void An_urgent_finding_saves_at_once_and_speaks()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("103.4⏎");

        var entry = Assert.Single(terminal.Entries);
        Assert.Contains(entry.Findings, f => f.Level == Level.Urgent);
        Assert.Contains("URGENT", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("keep clear of hatches, do not sample.", terminal.Words, StringComparison.Ordinal);
        Assert.Null(terminal.State.Draft);
        Assert.Equal(1, terminal.Round.Current);
    }

    [Fact]
    public void An_urgent_value_speaks_before_Enter()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("103.4");

        Assert.Contains("urgent", terminal.Screen, StringComparison.Ordinal);
        Assert.Empty(terminal.Entries);
    }

    [Fact]
    public void The_result_of_a_sample_shows_under_it_when_the_sample_is_whole()
    {
        using var terminal = new Terminal();

        // The small line's end points: 100 (2A - B) / (2A - B + C - B) = 82.0 of 29.37, 34.33, 39.68.
        terminal.Open("White liquor titration").Press("29.37⏎34.33⏎");
        Assert.DoesNotContain("Causticity", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("39.68⏎");

        var row = Assert.Single(terminal.Screen.Split('\n'), l => l.Contains("= Causticity of white liquor", StringComparison.Ordinal));
        Assert.Contains("82.0 %", row, StringComparison.Ordinal);
        Assert.Contains("plus or minus", row, StringComparison.Ordinal);
    }

    [Fact]
    public void A_result_stays_as_its_own_readings_made_it_when_a_later_row_shares_one_of_them()
    {
        // The dose takes feed and flow; the second one flow and CaO. The last row judges the flow again, beside the feed of the round before.
        using var terminal = new Terminal(changed:
        [
            ("inputs.cao = \"LM-CAO\"", "inputs.cao = { value = \"88.0 %\", u = \"1\", source = \"usual lime\" }"),
            ("[[calculation]]\nuse = \"margin\"", """
                [[calculation]]
                use = "dose"
                name = "usual feed"
                inputs.lime = { value = "18.0 t/h", u = "1%", source = "usual feed" }
                inputs.cao = "LM-CAO"
                inputs.flow = "SL-F1"
                outputs.dose = "SL-CAO2"

                [[calculation]]
                use = "margin"
                """),
            ("LM-F1,Lime feed", "SL-CAO2,CaO dose of the usual feed,slaker,kg/m3,derived,1,,,,,,45,62,68,,,slaker,,,,\nLM-F1,Lime feed"),
        ]);

        terminal.Size(120, 40).Open("Line round").Press("99.8⏎302⏎20⏎");
        Assert.Contains("58.3 kg/m3", Dose(terminal), StringComparison.Ordinal); // 10 x 20 x 88 / 302; of the round before 55.1
        terminal.Press("88.1⏎");

        Assert.Contains("58.3 kg/m3", Dose(terminal), StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.Equal(58.3, terminal.Entries.Single().Results.Single(r => r.Point == "SL-CAO").Value, 1);
    }

    private static string Dose(Terminal terminal) => terminal.Screen.Split('\n').Single(l => l.Contains("= CaO dose from the weigher", StringComparison.Ordinal));

    [Fact]
    public void A_row_tells_in_full_why_it_stands_out()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("⏎348⏎↑w");

        Assert.IsType<FindingsPage>(terminal.State.Top);
        Assert.Contains("above the watch limit 340 m3/h", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋");
        Assert.IsType<RoundPage>(terminal.State.Top);
    }

    [Fact]
    public void A_round_needs_a_person()
    {
        using var terminal = new Terminal(by: null);

        terminal.Press("⎋r⏎");

        Assert.Contains("say first who is typing", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_go_into_the_slot_in_which_the_round_was_begun()
    {
        using var terminal = new Terminal();

        // Begun inside the window of nine o'clock, ended when ten o'clock is already nearer.
        terminal.At(14).Open("Line round").Press("99.8⏎").At(31).Press("302⏎18.95⏎88.1⏎⏎");

        var checks = Handover.DueList.Between(terminal.Desk, Testing.Some.Morning, Testing.Some.Morning.AddMinutes(1)).Where(c => c.Round == "hourly");
        Assert.All(checks, c => Assert.Equal(Handover.CheckState.Done, c.State));
    }
}
