using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Screens.Tests;

/// <summary>
/// What was not read is said with fewer keys than anything that could be made up instead, and never with more. No reading can
/// be made up with fewer than two keys: a digit and Enter.
/// </summary>
public sealed class HonestKeysTests
{
    private const int FewestOfAReading = 2;
    private const string Save = "⏎";

    [Theory]
    [InlineData("Line round", "NN1⏎", 4)]
    [InlineData("White liquor titration", "N1⏎", 3)]
    [InlineData("Field walk", "N1⏎", 2)]
    public void A_round_that_was_not_walked_costs_fewer_keys_than_one_that_is_made_up(string round, string keys, int points)
    {
        using var terminal = new Terminal();
        terminal.Open(round);
        if (round == "Field walk")
        {
            terminal.Press("0840⏎0855⏎"); // asked of every field walk, true or not
        }

        terminal.Press(keys + Save);

        var readings = Assert.Single(terminal.Entries).Readings;
        Assert.Equal(points, readings.Count);
        Assert.All(readings, r => Assert.Equal("no time", r.Why));
        Assert.True((keys + Save).Length < (FewestOfAReading * points) + Save.Length);
    }

    [Fact]
    public void A_single_reading_that_was_not_taken_is_left_open_with_one_key_and_makes_no_value()
    {
        using var terminal = new Terminal();

        const string left = "⏎";
        terminal.Open("Line round").Press(left + "302⏎⎋");

        Assert.Equal("SL-F1=302", terminal.Typed);
        Assert.True(left.Length < FewestOfAReading);
    }

    [Fact]
    public void A_reason_costs_no_more_keys_than_a_whole_number_near_the_value_before()
    {
        using var terminal = new Terminal();
        const string reason = "n1⏎";
        var before = terminal.Desk.State.Latest.ToDictionary(l => l.Key, l => l.Value.Value!.Value, StringComparer.OrdinalIgnoreCase);

        terminal.Open("Line round").Press(string.Concat(Enumerable.Repeat(reason, 4)) + Save);

        Assert.Equal("SL-T1=- SL-F1=- LM-F1=- LM-CAO=-", terminal.Typed);
        Assert.All(terminal.Entries[0].Readings, r => Assert.True(reason.Length <= $"{Math.Floor(before[r.Point])}⏎".Length));
    }

    [Fact]
    public void An_item_that_was_not_seen_costs_as_many_keys_as_one_that_was()
    {
        using var terminal = new Terminal(before: t => t.Carry("isolation", "slaker", "seal change", null, ("points", "2"), ("permit", "4417")));

        terminal.Press("cn⏎");

        Assert.False(Assert.IsType<CarryConfirmed>(terminal.Journal.Read().Last().Body).Seen);
    }

    [Fact]
    public void A_section_that_was_not_checked_costs_one_key_as_one_that_was_and_asks_for_no_more()
    {
        using var terminal = new Terminal(before: t => t.HeldBy("op1"));

        terminal.Press("h22222222⏎⏎⏎" + Terminal.Pin + "⏎");

        var prepared = Assert.IsType<HandoverPrepared>(terminal.Journal.Read().Last().Body);
        Assert.All(HazardSections.All, section => Assert.Equal("not-checked", prepared.Declared[section]));
    }

    [Fact]
    public void An_upset_is_one_line_and_not_forty_reasons()
    {
        using var terminal = new Terminal();

        terminal.Press("r⏎d⏎lime screw tripped⏎");

        Assert.Contains(DueList.Between(terminal.Desk, terminal.Desk.Now, terminal.Desk.Now.AddHours(2)), c => c.Upset);
    }
}
