using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Screens.Tests;

/// <summary>What is carried, where the walk reaches it.</summary>
public sealed class CarriedInRoundTests
{
    [Fact]
    public void An_item_whose_look_is_due_stands_before_the_rows_of_its_equipment_and_names_its_key()
    {
        using var terminal = NextShift();

        var lines = terminal.Open("Line round").Screen.Split('\n');

        var item = Array.FindIndex(lines, l => l.Contains("CARRIED Slaker, safety equipment: no flow. Still so? c", StringComparison.Ordinal));
        Assert.Contains("SL-T1", lines[item + 1], StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_looked_at_with_a_key_and_a_digit_and_the_round_goes_on()
    {
        using var terminal = NextShift();

        terminal.Open("Line round").Press("c1⏎");

        Assert.IsType<RoundPage>(terminal.State.Top);
        Assert.DoesNotContain("Still so?", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("still so (#", terminal.Screen, StringComparison.Ordinal);
        Assert.Equal((3, true, "op1"), Looks(terminal).Select(l => (((CarryConfirmed)l.Body).Id, ((CarryConfirmed)l.Body).Seen, l.By)).Single());
    }

    [Fact]
    public void What_has_changed_is_said_in_words_and_the_round_goes_on_too()
    {
        using var terminal = NextShift();

        terminal.Open("Line round").Press("c2⏎a trickle⏎");

        Assert.IsType<RoundPage>(terminal.State.Top);
        Assert.Equal("a trickle", Assert.Single(Looks(terminal).Select(l => ((CarryConfirmed)l.Body).Changed)));
    }

    [Fact]
    public void A_look_in_vain_is_a_look_but_not_seen_stays_beside_it()
    {
        using var terminal = NextShift();

        terminal.Open("Line round").Press("cn⏎");

        Assert.DoesNotContain("Still so?", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("NOT SEEN", terminal.Press("⎋⎋c").Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_several_at_one_place_the_round_goes_on_when_none_is_left()
    {
        using var terminal = NextShift(t => t.Carry("bypass", "slaker", "high-level trip off", Some.Morning.AddHours(15), ("allowed-by", "eng1"), ("instead", "level by hand")));

        terminal.Open("Line round").Press("c1⏎");
        Assert.IsType<CarriedPage>(terminal.State.Top);
        terminal.Press("1⏎");

        Assert.IsType<RoundPage>(terminal.State.Top);
    }

    [Fact]
    public void Values_typed_in_a_burst_do_not_land_in_it()
    {
        using var terminal = NextShift();

        terminal.Open("Line round").Press("99.8⏎301⏎18.9⏎88⏎⏎");

        Assert.Equal("SL-T1=99.8 SL-F1=301 LM-F1=18.9 LM-CAO=88", terminal.Typed);
        Assert.Empty(Looks(terminal));
    }

    [Fact]
    public void At_the_end_of_the_walk_what_was_not_looked_at_is_offered_once_more()
    {
        using var terminal = NextShift();

        terminal.Open("Line round").Press("99.8⏎301⏎18.9⏎88⏎");
        Assert.Contains("c looks at 1 carried item first", terminal.Words, StringComparison.Ordinal);
        terminal.Press("c1⏎⏎");

        Assert.Single(Looks(terminal));
        Assert.Equal(4, terminal.Entries.Single().Readings.Count);
    }

    [Fact]
    public void When_the_field_has_gone_on_to_the_next_area_the_key_still_opens_what_the_last_one_left()
    {
        using var terminal = NextShift(t => t.Carry("action", "lime", "sweep"));
        terminal.Open("Line round").Press("99.8⏎301⏎");
        Assert.Equal("lime", terminal.Round.Row.Point.Area);

        terminal.Press("c");

        Assert.Contains("> HURTS safety equipment, Slaker: no flow", terminal.Words, StringComparison.Ordinal);
        Assert.Contains("sweep", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_opened_in_this_shift_or_lies_elsewhere_is_not_asked_about()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "no flow", null, ("instead", "the one at the stair"));
            t.Carry("action", "laboratory", "new burette");
        });

        Assert.DoesNotContain("Still so?", terminal.Open("Line round").Screen, StringComparison.Ordinal);
        Assert.Contains("no flow", terminal.Press("c").Screen, StringComparison.Ordinal);
        Assert.DoesNotContain("burette", terminal.Screen, StringComparison.Ordinal);
    }

    /// <summary>An eyewash went out of service in the morning; now it is five past nine in the evening.</summary>
    private static Terminal NextShift(Action<Terminal>? also = null)
    {
        var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "no flow", null, ("instead", "the one at the stair"));
            also?.Invoke(t);
        });
        return terminal.Tick(12 * 60);
    }

    private static List<JournalRecord> Looks(Terminal terminal) => [.. terminal.Journal.Read().Where(r => r.Body is CarryConfirmed)];
}
