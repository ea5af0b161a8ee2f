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
        terminal.Press(string.Concat(Enumerable.Repeat("↓", terminal.Round.Rows.FindIndex(r => r.Rests is not null))));
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

    private static void Stopped(Terminal terminal) => Assert.NotNull(Checks.Writing.ChangeState(terminal.Desk, "lime-screw", "stopped", null, null, "op1").Record);
}
