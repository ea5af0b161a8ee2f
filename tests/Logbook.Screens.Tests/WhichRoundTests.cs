using Logbook.Journal;

namespace Logbook.Screens.Tests;

public sealed class WhichRoundTests
{
    private static Terminal Bridged() => new(before: t => t.At(-55).Carry(
        "bypass", "lime-screw", "low-flow trip bridged", Testing.Some.Morning.AddHours(9), ("instead", "flow by hand"), ("allowed-by", "eng1"), ("point", "SL-F1"), ("every", "1h")));

    private static string Row(Terminal terminal, string title) =>
        terminal.Screen.Split('\n').Single(l => l.Contains(title, StringComparison.Ordinal) && (l.StartsWith(" >", StringComparison.Ordinal) || l.StartsWith("   ", StringComparison.Ordinal)));

    [Fact]
    public void What_is_read_instead_of_a_trip_stands_first_and_is_typed_like_a_round()
    {
        using var terminal = Bridged();

        terminal.Press("r");
        Assert.StartsWith(" > t Instead of the trip, item 3", Row(terminal, "Instead of the trip"), StringComparison.Ordinal);
        Assert.Contains("SL-F1 due 09:05, closes 09:35", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("⏎");
        Assert.Contains("INSTEAD OF THE TRIP, ITEM 3 09:05", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("301⏎⏎");

        var entry = Assert.Single(terminal.Entries);
        Assert.Equal((null, "SL-F1"), (entry.Round, Assert.Single(entry.Readings).Point));
        Assert.Null(terminal.State.Draft);
        Assert.Contains("SL-F1 next 10:05", terminal.Press("⎋⎋⎋r").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_instead_of_a_trip_that_was_left_behind_is_gone_on_with()
    {
        using var terminal = Bridged();

        terminal.Press("rt⏎301⏎").Crash().Press("op1⏎");
        Assert.Contains("Instead of the trip, item 3: 1 reading of Operator one", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("INSTEAD OF THE TRIP, ITEM 3", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_keeps_its_digit_whatever_is_due()
    {
        using var terminal = Bridged();
        char Key(string title) => Row(terminal, title)[3];
        terminal.Press("r");
        var before = (Key("Line round"), Key("White liquor titration"), Key("Field walk"));

        terminal.Press("⎋").Tick(70);
        terminal.Press("r");

        Assert.Equal(before, (Key("Line round"), Key("White liquor titration"), Key("Field walk")));
        Assert.StartsWith(" > ", Row(terminal.Press(Key("White liquor titration").ToString()), "White liquor titration"), StringComparison.Ordinal);
        Assert.Contains("WHITE LIQUOR TITRATION", terminal.Press("⏎").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Behind_the_digit_that_chose_a_round_a_value_chooses_no_other()
    {
        using var terminal = new Terminal();

        terminal.Press("r1");
        Assert.Contains("Enter opens 1 Line round", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("103.2");
        Assert.Contains("not taken: press Enter to open 1 Line round; Up and Down choose another", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Equal("hourly", terminal.Round.Round.Id);
        Assert.Equal("", terminal.Round.Field);
        Assert.Contains("WHITE LIQUOR TITRATION", terminal.Press("⎋↑2⏎").Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Esc_leads_back_to_where_the_round_was_opened_from_and_a_round_that_is_done_to_Now()
    {
        using var terminal = new Terminal();

        terminal.Press("r1⏎⎋");
        Assert.IsType<ChoosePage>(terminal.State.Top);
        terminal.Press("⎋");
        Assert.IsType<NowPage>(terminal.State.Top);
        terminal.Press("r1⏎99.8⏎302⏎18.95⏎88.1⏎⏎");
        Assert.IsType<NowPage>(terminal.State.Top);
    }

    [Fact]
    public void A_key_that_no_round_has_says_so()
    {
        using var terminal = new Terminal();

        Assert.Contains("no round has t", terminal.Press("rt").Screen, StringComparison.Ordinal);
    }
}
