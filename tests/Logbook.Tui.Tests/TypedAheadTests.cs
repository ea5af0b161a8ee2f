using Logbook.Checks;
using Logbook.Journal;
using Terminal.Gui.Input;

namespace Logbook.Tui.Tests;

/// <summary>Keys that were typed, held or pasted behind a PIN press nothing on the page that comes after it.</summary>
[Collection("the toolkit, which keeps some of its state for the whole process")]
public sealed class TypedAheadTests
{
    private static readonly TimeSpan Held = TimeSpan.FromMilliseconds(90);

    /// <summary>A release of liquor is about to be closed: its words are written, the PIN is asked for.</summary>
    private static Glass AtThePin()
    {
        var glass = new Glass();
        Assert.Empty(Writing.AddCarried(glass.Desk, new Carry("release", "slaker", "liquor over the launder", null, null, new Dictionary<string, string>(StringComparer.Ordinal)), "op1").Mistakes);
        glass.Wait(TimeSpan.FromSeconds(1)).Press(Key.C, Key.X).Type("hosed down").Press(Key.Enter);
        Assert.Contains("PIN of Operator one", glass.Screen, StringComparison.Ordinal);
        return glass;
    }

    private static Key[] Keys(string text) => [.. text.Select(c => new Key(c))];

    private static bool Closed(Glass glass) => glass.Journal.Read().Any(r => r.Body is CarryClosed);

    [Fact]
    public void What_waits_behind_the_PIN_presses_nothing_on_the_next_page()
    {
        using var glass = AtThePin();

        glass.PressAtOnce([.. Keys(Glass.Pin), Key.Enter, Key.Esc, .. Keys("rq"), Key.Enter]);

        Assert.True(Closed(glass));
        Assert.False(glass.Ended);
        Assert.Contains("closed (#", glass.Screen, StringComparison.Ordinal);
        var page = glass.Row(0);
        glass.Paste("l").Press(Key.L);
        Assert.Equal(page, glass.Row(0));

        glass.Wait(TimeSpan.FromSeconds(1)).Press(Key.Esc, Key.L);
        Assert.Contains("Log, newest record first", glass.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_that_is_held_presses_nothing_until_it_is_let_go()
    {
        using var glass = AtThePin();
        glass.Type(Glass.Pin).Press(Key.Enter);
        var page = glass.Row(0);

        for (var times = 0; times < 20; times++)
        {
            glass.Wait(Held).Press(Key.Esc);
        }

        Assert.Equal(page, glass.Row(0));
        glass.Wait(TimeSpan.FromSeconds(1)).Press(Key.Esc);
        Assert.NotEqual(page, glass.Row(0), StringComparer.Ordinal);
    }

    [Fact]
    public void A_wrong_PIN_is_not_followed_by_the_next_one_unseen()
    {
        using var glass = AtThePin();

        glass.PressAtOnce([.. Keys("000999"), Key.Enter, .. Keys(Glass.Pin), Key.Enter]);

        Assert.False(Closed(glass));
        Assert.Contains("that is not op1's PIN", glass.Screen, StringComparison.Ordinal);
        glass.Wait(TimeSpan.FromSeconds(1)).Type(Glass.Pin).Press(Key.Enter);
        Assert.True(Closed(glass));
    }
}
