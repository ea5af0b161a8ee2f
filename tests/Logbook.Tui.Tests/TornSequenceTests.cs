using Terminal.Gui.Input;

namespace Logbook.Tui.Tests;

/// <summary>On a slow line a key's sequence arrives in pieces; the first of them is Esc, and the others must command nothing.</summary>
[Collection("the toolkit, which keeps some of its state for the whole process")]
public sealed class TornSequenceTests
{
    [Theory]
    [InlineData("[?1;2c")] // what a terminal answers when it is asked what it is: ? shows the keys, c what is carried
    [InlineData("[A")]
    [InlineData("Oq")] // 1 of a keypad in application mode; q leaves the program
    [InlineData("[24~")]
    public void The_rest_of_a_torn_sequence_is_dropped(string rest)
    {
        using var glass = new Glass();
        var before = glass.Row(0);

        glass.Press(Key.Esc).Type(rest);

        Assert.False(glass.Ended);
        Assert.Equal(before, glass.Row(0));
        Assert.DoesNotContain("does nothing here", glass.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void What_comes_after_it_is_a_key_again()
    {
        using var glass = new Glass();

        glass.Press(Key.Esc).Type("[A").Press(Key.L);

        Assert.Contains("Log, newest record first", glass.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Esc_and_a_letter_that_arrive_as_one_are_both_heard()
    {
        using var glass = new Glass();

        glass.Press(Key.L).Press(Key.A.WithAlt);

        Assert.Contains("Audit", glass.Row(0), StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_typed_after_Esc_by_a_person_are_keys()
    {
        using var glass = new Glass();

        glass.Press(Key.L, Key.Esc, Key.A);
        Assert.Contains("Audit", glass.Row(0), StringComparison.Ordinal);
        glass.Press(Key.Esc).Wait(TimeSpan.FromSeconds(1)).Type("[");

        Assert.Contains("'[' does nothing here", glass.Screen, StringComparison.Ordinal);
    }
}
