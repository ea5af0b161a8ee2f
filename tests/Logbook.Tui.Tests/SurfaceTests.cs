using Logbook.Checks;
using Logbook.Journal;
using Logbook.Testing;
using Terminal.Gui.App;
using Terminal.Gui.Drawing;
using Terminal.Gui.Input;

namespace Logbook.Tui.Tests;

[Collection("the toolkit, which keeps some of its state for the whole process")]
public sealed class SurfaceTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void Now_fills_the_screen_and_its_keys_stand_in_the_last_row(int width, int height)
    {
        using var glass = new Glass(width, height);

        Assert.Contains("Two Willows test line", glass.Row(0), StringComparison.Ordinal);
        Assert.Contains("? keys", glass.Row(height - 1), StringComparison.Ordinal);
        Assert.Contains("urgent", glass.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_colour_a_watch_is_underlined_under_its_words_alone()
    {
        using var glass = new Glass(colour: false);
        Assert.Empty(RecordEntry.Run(glass.Desk, Some.Entry("SL-F1=345")).Mistakes);
        glass.Wait(TimeSpan.FromMinutes(1));

        Assert.True(glass.Under("1 watch").Style.HasFlag(TextStyle.Underline));
        Assert.False(glass.Under(" 1 watch").Style.HasFlag(TextStyle.Underline));
    }

    [Fact]
    public void A_round_is_typed_by_keys_and_saved()
    {
        using var glass = new Glass();

        glass.Press(Key.R, Key.Enter).Type("99.8").Press(Key.Enter);
        Assert.Contains("3 open", glass.Row(0), StringComparison.Ordinal);
        glass.Type("302").Press(Key.Enter, Key.Esc);

        var entry = glass.Journal.Read().Select(r => r.Body).OfType<Entry>().Last();
        Assert.Equal("SL-T1=99.8 SL-F1=302", string.Join(' ', entry.Readings.Select(r => $"{r.Point}={r.Typed}")));
        Assert.Contains("saved", glass.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void At_rest_the_machine_is_left_alone_until_a_key_comes()
    {
        using var glass = new Glass();
        glass.Press(Key.CursorDown);
        var typing = Application.MaximumIterationsPerSecond;

        for (var second = 0; second < 15; second++)
        {
            glass.Wait(TimeSpan.FromSeconds(1));
        }

        Assert.True(Application.MaximumIterationsPerSecond < typing / 2, $"{Application.MaximumIterationsPerSecond} turns a second at rest, {typing} while somebody types");
        glass.Press(Key.CursorDown);
        Assert.Equal(typing, Application.MaximumIterationsPerSecond);
    }

    [Fact]
    public void Twenty_readings_typed_in_a_burst_arrive_complete()
    {
        using var glass = new Glass(files: LongRound.Files(20));

        glass.Press(Key.R, Key.Enter);
        for (var i = 0; i < 20; i++)
        {
            glass.Type($"9{i % 10}.{i / 10}").Press(Key.Enter);
        }

        glass.Press(Key.Enter);
        var entry = glass.Journal.Read().Select(r => r.Body).OfType<Entry>().Last();
        Assert.Equal(string.Join(' ', Enumerable.Range(0, 20).Select(i => $"9{i % 10}.{i / 10}")), string.Join(' ', entry.Readings.Select(r => r.Typed)));
    }

    [Fact]
    public void A_line_feed_is_the_keypads_Enter()
    {
        using var glass = new Glass();

        glass.Press(Key.R, Key.Enter).Type("99.8").Press(Key.Enter.WithCtrl);

        Assert.Contains("3 open", glass.Row(0), StringComparison.Ordinal);
    }

    [Fact]
    public void Esc_goes_back_and_never_ends_the_program()
    {
        using var glass = new Glass();

        glass.Press(Key.L, Key.Esc, Key.Esc, Key.Esc);
        Assert.False(glass.Ended);
        glass.Press(Key.Q);

        Assert.True(glass.Ended);
    }

    [Fact]
    public void A_pasted_column_fills_the_round()
    {
        using var glass = new Glass();

        glass.Press(Key.R, Key.Enter).Paste("99.8\n302\n18.9\n");

        Assert.Contains("1 open", glass.Row(0), StringComparison.Ordinal);
    }

    [Fact]
    public void The_screen_follows_the_terminals_size()
    {
        using var glass = new Glass(120, 40);

        glass.Press(Key.R, Key.Enter).Size(80, 24);
        Assert.Contains("? keys", glass.Row(23), StringComparison.Ordinal);
        Assert.Contains("SL-T1", glass.Screen, StringComparison.Ordinal);
        glass.Size(1, 1).Size(100, 30);

        Assert.Contains("? keys", glass.Row(29), StringComparison.Ordinal);
    }

    [Fact]
    public void What_another_terminal_writes_appears_by_itself()
    {
        using var glass = new Glass();
        Assert.DoesNotContain("348", glass.Screen, StringComparison.Ordinal);

        RecordEntry.Run(Some.Desk(glass.Desk.Clock, glass.Journal), Some.Entry("SL-F1=348"));
        glass.Wait(TimeSpan.FromSeconds(2));

        Assert.Contains("348", glass.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Urgent_stands_out_in_colour_and_says_so()
    {
        using var glass = new Glass();

        Assert.Equal(ColorName16.Red, glass.Under("urgent ").Background.GetClosestNamedColor16());
    }

    [Fact]
    public void Without_colour_nothing_has_one()
    {
        using var glass = new Glass(colour: false);
        glass.Press(Key.R, Key.Enter).Type("103.4");

        foreach (var words in new[] { "urgent", "SL-T1", "103.4_", "Delete empty" })
        {
            Assert.Equal((Color.None, Color.None), (glass.Under(words).Foreground, glass.Under(words).Background));
        }

        Assert.True(glass.Under("103.4_").Style.HasFlag(TextStyle.Reverse));
    }

    [Fact]
    public void Wide_and_combining_characters_keep_the_columns()
    {
        using var glass = new Glass();

        glass.Press(Key.R, Key.Enter).Type("99.8").Press(Key.Enter, Key.CursorUp, Key.M).Type("漢字 é °C");

        Assert.Equal(" > 漢字 é °C_", glass.Row(20));
        Assert.Contains("Enter take", glass.Row(23), StringComparison.Ordinal);
    }
}
