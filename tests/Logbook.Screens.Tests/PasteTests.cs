namespace Logbook.Screens.Tests;

public sealed class PasteTests
{
    [Theory]
    [InlineData("301\n19.4\n88")]
    [InlineData("\n301\r\n19.4")]
    public void Of_a_column_pasted_where_one_line_is_asked_for_nothing_is_taken_and_that_is_said(string column)
    {
        using var terminal = new Terminal();
        terminal.Open("Field walk");

        terminal.Paste(column);

        Assert.Equal("", Assert.IsType<AskPage>(terminal.State.Top).Text);
        Assert.Contains("lines were pasted where one is asked for: nothing was taken", terminal.Screen, StringComparison.Ordinal);
        Assert.Equal("0835", Assert.IsType<AskPage>(terminal.Paste("0835\n").State.Top).Text);
    }

    [Fact]
    public void A_tab_in_what_is_pasted_is_a_blank()
    {
        using var terminal = new Terminal();

        terminal.Press("m").Paste("seal\twater");

        Assert.Equal("seal water", Assert.IsType<AskPage>(terminal.State.Top).Text);
    }

    [Fact]
    public void A_character_that_did_not_arrive_whole_is_not_saved()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("m").Paste("caf\uFFFD noisy").Press("⏎");

        Assert.IsType<AskPage>(terminal.State.Top);
        Assert.Contains("did not arrive whole", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pasted_column_is_typed_row_by_row()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Paste("99.8\r\n302\r\n\r\n88,1\r\n").Press("⎋");

        Assert.Equal("SL-T1=99.8 SL-F1=302 LM-CAO=88,1", terminal.Typed);
    }

    [Fact]
    public void A_round_that_was_pasted_or_typed_from_a_sheet_is_not_flagged_for_it()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Paste("99.8\n302\n18.9\n88.1\n").Press("⏎");
        terminal.Open("Field walk").Press("0840⏎0855⏎").Paste("1\n85\n").Press("⏎⎋");

        var flags = Handover.Audit.Between(terminal.Desk, terminal.Desk.Now.AddDays(-1), terminal.Desk.Now.AddMinutes(1));

        Assert.Equal(2, terminal.Entries.Count);
        Assert.DoesNotContain(flags, f => terminal.Journal.Read().Any(r => r.Seq == f.Seq && r.Entered >= Testing.Some.Morning));
    }

    [Fact]
    public void What_has_no_line_end_waits_for_its_Enter()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Paste("99.8\n302");

        Assert.Equal((1, "302"), (terminal.Round.Current, terminal.Round.Field));
    }

    [Fact]
    public void The_first_line_that_is_not_accepted_ends_it_and_says_how_much_was_left_out()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Paste("99.8\nflow\n18.9\n88.1\n");

        Assert.Equal((1, "flow"), (terminal.Round.Current, terminal.Round.Field));
        Assert.Contains("pasting ended at line 2; 2 more were left out", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("is no number", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void What_has_no_row_is_left_out_and_said()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Paste("99.8\n302\n18.9\n88.1\n77\n66\n");

        Assert.Contains("2 more were left out", terminal.Screen, StringComparison.Ordinal);
        Assert.Equal("88.1", terminal.Round.Rows[3].Text);
    }

    [Fact]
    public void Two_urgent_lines_of_one_paste_are_each_saved_once()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Paste("103.4\n150\n18.9\n88.1\n").Press("⎋");

        Assert.Equal("SL-T1=103.4 SL-F1=150 LM-F1=18.9 LM-CAO=88.1", terminal.Typed);
    }

    [Fact]
    public void Control_characters_of_a_pasted_remark_are_seen_and_not_obeyed()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎↑m").Paste("red\u001b[31m\u202e").Press("⏎⎋⎋l⏎");

        Assert.Contains("red\\u001B[31m\\u202E", terminal.Screen, StringComparison.Ordinal);
        Assert.DoesNotContain(terminal.Conversation.Sheet.Lines, l => l.Text.Any(char.IsControl));
    }
}
