using CsCheck;
using Logbook.Testing;

namespace Logbook.Screens.Tests;

public sealed class DrawingTests
{
    private static readonly Gen<string> Words = Gen.String[Gen.OneOf(Gen.Char['a', 'z'], Gen.Char[" \u001b°漢\u0301\t"])];

    [Fact]
    public void What_is_said_of_a_key_stands_whole_in_as_many_lines_as_it_takes()
    {
        using var terminal = new Terminal(before: t => t.Carry("permit", "slaker", "welding at the hatch", Logbook.Testing.Some.Morning.AddHours(3), ("number", "4417"), ("inside", "2")));
        const string Long = "this is said of the key that was pressed last and it is rather longer than what one line of a small screen can hold of it";

        var sheet = View.Of(terminal.Size(80, 24).Press("c").State.Say(Long));

        Assert.Contains(Long, string.Join(' ', sheet.Text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Equal(24, sheet.Lines.Count);
        Assert.Equal(10, View.Of(terminal.Size(40, 10).State.Say(Long)).Lines.Count);
    }

    [Fact]
    public void A_wrapped_line_is_never_wider_than_asked_and_no_word_is_lost() =>
        Words.Select(Gen.Int[2, 60]).Sample((text, width) =>
        {
            var lines = TextWidth.Wrap(text, width);

            Assert.All(lines, l => Assert.True(TextWidth.Of(l) <= width));
            Assert.Equal(Letters(Handover.Say.Visible(text)), Letters(string.Concat(lines)));
        });

    [Fact]
    public void A_fitted_text_is_as_wide_as_asked() =>
        Words.Select(Gen.Int[1, 60]).Sample((text, width) => Assert.Equal(width, TextWidth.Of(TextWidth.Fit(text, width))));

    [Fact]
    public void The_end_of_a_text_that_is_being_written_fits_and_is_its_end() =>
        Words.Select(Gen.Int[2, 60]).Sample((text, width) =>
        {
            var tail = TextWidth.Tail(text, width);

            Assert.True(TextWidth.Of(tail) <= width);
            Assert.EndsWith(tail.TrimStart('…'), Handover.Say.Visible(text), StringComparison.Ordinal);
        });

    [Fact]
    public void Whatever_is_pressed_the_screen_is_as_large_as_the_terminal_and_Esc_never_ends_it()
    {
        var keys = Gen.String[Gen.Char["0123456789.,-+nmtskwilruv?/abhgafcdpNzxyoe!]⏎⏎⏎⎋⎋↑↓←→⇞⇟⌫⌦"], 1, 60];
        keys.Select(Gen.Int[1, 130], Gen.Int[1, 45]).Sample((pressed, width, height) =>
        {
            using var terminal = new Terminal(before: t => t.Carry("safety-equipment", "slaker", "no flow"));
            terminal.Size(width, height);
            foreach (var key in pressed)
            {
                terminal.Press(key.ToString());
                var lines = terminal.Conversation.Sheet.Lines;

                Assert.Equal(height, lines.Count);
                Assert.All(lines, l => Assert.True(TextWidth.Of(l.Text) <= width));
            }

            Assert.False(terminal.Conversation.Over);
        }, iter: 120);
    }

    [Fact]
    public void Whatever_is_pressed_every_value_that_was_taken_is_in_the_journal_or_in_the_draft()
    {
        var keys = Gen.String[Gen.Char["0123456789.n⏎⏎⏎⎋↑↓⌦"], 1, 80];
        keys.Sample(pressed =>
        {
            using var terminal = new Terminal();
            terminal.Open("Line round");
            foreach (var key in pressed)
            {
                terminal.Press(key.ToString());
                if (terminal.State.Pages.OfType<RoundPage>().FirstOrDefault() is not { } round)
                {
                    break;
                }

                var kept = terminal.Typed + " " + string.Join(' ', terminal.State.Draft?.Lines.Select(l => $"{l.Point}={l.Text}") ?? []);
                Assert.All(round.Rows.Where(r => r.Answered), r => Assert.Contains($"{r.Point.Tag}={r.Text}", kept, StringComparison.Ordinal));
            }
        }, iter: 120);
    }

    [Fact]
    public void Every_key_of_a_page_stands_in_its_help_with_the_reason_when_it_does_nothing()
    {
        using var terminal = new Terminal();

        terminal.Size(120, 60).Press("?");

        Assert.All(new NowPage(0, 0).Keys.Rows, row => Assert.Contains(row.Help[..Math.Min(40, row.Help.Length)], terminal.Screen, StringComparison.Ordinal));
        Assert.Contains("Not now: nothing is unsaved.", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_that_does_nothing_now_says_why()
    {
        using var terminal = new Terminal();

        terminal.Press("v");

        Assert.Contains("v: nothing is unsaved", terminal.Screen, StringComparison.Ordinal);
    }

    private static string Letters(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    [Fact]
    public void What_a_tiny_screen_cannot_hold_is_said()
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("safety-equipment", "slaker", "no flow when tested", null, ("instead", "the one at the classifier stair"));
            t.Carry("isolation", "lime-screw", "seal change", null);
        });

        terminal.Size(40, 8).Open("Line round");

        Assert.Contains("more lines above", terminal.Screen.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("> SL-T1", terminal.Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(40, 10)]
    [InlineData(40, 8)]
    public void On_a_tiny_screen_what_can_hurt_keeps_its_head(int width, int height)
    {
        using var terminal = new Terminal(before: t =>
        {
            t.Carry("permit", "slaker", "inspection of the rake", Some.Morning.AddHours(2), ("number", "4417"), ("inside", "2"));
            t.Carry("safety-equipment", "slaker", "no flow when tested", null, ("instead", "the one at the classifier stair"));
            t.Carry("isolation", "lime-screw", "seal change", null);
        });

        foreach (var keys in new[] { "r1⏎", "⎋l", "/SL-F1⏎" })
        {
            terminal.Press("⎋").Size(width, height).Press(keys);
            Assert.Contains(terminal.Screen.Split('\n')[..3], l => l.StartsWith(" INSIDE Slaker", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("check first", " check first flow by hand")]
    [InlineData("own words", " own words flow by hand")]
    [InlineData("say whom to", " say whom to flow by hand")]
    public void A_label_is_split_into_no_two_columns(string label, string first)
    {
        var lines = Gutter.Lines(label, Look.Strong, "flow by hand first, then the lime, then the rest of the line", 40).Select(l => l.Text).ToList();

        Assert.StartsWith(first, lines[0], StringComparison.Ordinal);
        Assert.All(lines.Skip(1), l => Assert.StartsWith(new string(' ', Gutter.Wide), l, StringComparison.Ordinal));
        Assert.All(lines, l => Assert.True(l.Length <= 40, l));
        Assert.EndsWith("the rest of the line", string.Join(' ', lines.Select(l => l.Trim())), StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_is_cut_between_words_where_that_leaves_most_of_it() =>
        Assert.Equal(("flow to the …", "flo…", "a longword…"), (TextWidth.Cut("flow to the slaker", 15), TextWidth.Cut("flow to", 4), TextWidth.Cut("a longwordindeed", 11)));

    [Fact]
    public void A_page_that_is_read_moves_with_the_first_key_and_comes_back_with_the_first()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press("?");
        var first = terminal.Screen;

        terminal.Press("↓");
        Assert.NotEqual(first, terminal.Screen, StringComparer.Ordinal);
        terminal.Press(new string('⇟', 9));
        var last = terminal.Screen;
        Assert.DoesNotContain("below", last.Split('\n')[^3], StringComparison.Ordinal);
        terminal.Press("↑");
        Assert.NotEqual(last, terminal.Screen, StringComparer.Ordinal);
    }

    [Fact]
    public void Leafing_through_a_page_shows_every_line_of_it()
    {
        using var terminal = new Terminal();
        terminal.Open("Line round").Press("?");
        var seen = new HashSet<string>(StringComparer.Ordinal);

        for (var leaf = 0; leaf < 12; leaf++)
        {
            seen.UnionWith(terminal.Screen.Split('\n'));
            terminal.Press("⇟");
        }

        Assert.All(terminal.State.Top.Draw(terminal.State).Body, line => Assert.Contains(line.Text.TrimEnd(), seen));
    }
}
