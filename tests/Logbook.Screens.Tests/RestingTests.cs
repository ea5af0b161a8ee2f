using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>What rests is not asked for, and the round counts what the chooser of rounds counts.</summary>
public sealed class RestingTests
{
    [Fact]
    public void The_round_and_the_chooser_of_rounds_say_one_number()
    {
        using var terminal = new Terminal(before: Stopped);

        terminal.Press("r");
        var chooser = terminal.Screen.Split('\n').First(l => l.Contains("Line round", StringComparison.Ordinal));
        terminal.Press("⎋").Open("Line round");
        var applies = terminal.Round.Rows.Count(r => r.Applies);

        Assert.True(applies < terminal.Round.Rows.Count);
        Assert.Contains($"0 done, {applies} open", chooser, StringComparison.Ordinal);
        Assert.Contains($" {applies} open", terminal.Screen.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("not asked", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("↓↓↑");
        Assert.NotNull(terminal.Round.Row.Rests);
        Assert.Contains($"not asked: {terminal.Round.Row.Rests}; Enter leaves it", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void With_all_that_is_asked_answered_one_more_Enter_saves_the_round()
    {
        using var terminal = new Terminal(before: Stopped);

        terminal.Open("Line round");
        for (var keys = 0; terminal.State.Top is RoundPage page && keys < 12; keys++)
        {
            terminal.Press(page.AllAnswered || page.Row.Rests is not null ? "⏎" : "n1⏎");
        }

        Assert.Equal(terminal.Entries.Single().Readings.Count, terminal.Entries.Single().Readings.Count(r => r.NotTaken));
        Assert.IsNotType<RoundPage>(terminal.State.Top);
    }

    [Theory]
    [InlineData("99.8⏎302⏎88.1⏎")]
    [InlineData("99.8⏎⏎↑↑302⏎88.1⏎")]
    [InlineData("99.8⏎↓88.1⏎302⏎")]
    public void Values_typed_from_a_sheet_pass_over_the_row_that_is_not_asked(string keys)
    {
        using var terminal = new Terminal(before: Stopped);

        terminal.Open("Line round").Press(keys);

        Assert.Equal("99.8 302 (open) 88.1", string.Join(' ', terminal.Round.Rows.Select(r => r.Text ?? "(open)")));
        Assert.True(terminal.Round.AtEnd);
    }

    [Fact]
    public void A_value_typed_where_nothing_is_asked_is_said_to_be_of_standing_equipment_before_and_after_Enter()
    {
        using var terminal = new Terminal(before: Stopped);

        terminal.Size(120, 40).Open("Line round").Press("↓↓↑3.2");
        Assert.Contains("NOT ASKED: Lime screw stopped since 08:02. Enter takes 3.2 for it all the same", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("LM-F1 3.2 was NOT ASKED FOR: Lime screw stopped since 08:02", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("(not asked)", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("↑⌦");
        Assert.Equal(2, terminal.Round.Current);
        Assert.Null(terminal.Round.Rows[2].Text);
    }

    [Fact]
    public void A_pasted_column_has_a_line_for_each_row_and_ends_before_a_value_slides_into_one_that_is_not_asked()
    {
        using var terminal = new Terminal(before: Stopped);

        terminal.Open("Line round").Paste("99.8\n302\n88.1\n");
        Assert.Equal("99.8 302 (open) (open)", string.Join(' ', terminal.Round.Rows.Select(r => r.Text ?? "(open)")));
        Assert.Contains("pasting ended at line 2; 1 more were left out; the next is LM-F1, not asked for: Lime screw stopped", terminal.Words, StringComparison.Ordinal);

        terminal.Press("⎋⎋").Open("Line round").Paste("\n88.1\n");
        Assert.Equal("99.8 302 (open) 88.1", string.Join(' ', terminal.Round.Rows.Select(r => r.Text ?? "(open)")));
    }

    private static void Stopped(Terminal terminal) => Assert.NotNull(Checks.Writing.ChangeState(terminal.Desk, "lime-screw", "stopped", null, null, "op1").Record);
}
