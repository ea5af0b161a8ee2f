using Logbook.Testing;

namespace Logbook.Screens.Tests;

/// <summary>What may be typed into a round's field, and what becomes of what was hit by mistake.</summary>
public sealed class FieldTests
{
    [Theory]
    [InlineData("1o3")]
    [InlineData("10m3")]
    [InlineData("99.8m")]
    [InlineData("99.8K")]
    [InlineData("1/3")]
    [InlineData("1?3")]
    [InlineData("12n4")]
    [InlineData("9c9")]
    public void A_character_hit_beside_a_digit_belongs_to_the_value_and_is_refused_in_words(string typed)
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press(typed + "⏎");

        Assert.Equal((0, typed), (terminal.Round.Current, terminal.Round.Field));
        Assert.Contains($"'{typed}' is no number; accepted: digits", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⌦⎋");
        Assert.Empty(terminal.Entries);
        Assert.Empty(Directory.GetFiles(terminal.Folder));
    }

    [Theory]
    [InlineData("Field walk", "0840⏎0855⏎")]
    [InlineData("Line round", "p0840⏎0855⏎")]
    public void From_when_the_values_count_stands_in_sight_while_they_are_typed(string round, string keys)
    {
        using var terminal = new Terminal();

        terminal.Open(round).Press(keys);
        Assert.Contains(", walked 08:40 to 08:55   op1", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("1⏎");

        Assert.Contains(", walked 08:40 to 08:55   op1", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_walk_outside_the_window_does_not_stand_under_its_round()
    {
        using var terminal = new Terminal();

        terminal.Open("Field walk").Press("0120⏎0140⏎");

        Assert.Contains("FIELD WALK, walked 01:20 to 01:40: not the one of 07:00", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_beside_a_digit_is_said_before_Enter_and_the_key_line_names_no_letter_that_commands()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("1o");

        Assert.Contains("is no number", terminal.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("n not taken", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("Delete empty", terminal.Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1o3⏎99.8⏎")]
    [InlineData("900⏎99.8⏎")]
    [InlineData("1o3⏎⌫⌫⌫99.8⏎")]
    public void After_a_refusal_the_first_digit_begins_the_value_anew_and_Backspace_mends_it(string keys)
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press(keys + "⎋");

        Assert.Equal("SL-T1=99.8", terminal.Typed);
    }

    [Fact]
    public void After_a_refusal_letters_command_again()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("1o3⏎n4⏎⎋");

        Assert.True(Assert.Single(Assert.Single(terminal.Entries).Readings).NotTaken);
    }

    [Fact]
    public void A_choice_takes_no_letter_either()
    {
        using var terminal = new Terminal();

        terminal.Open("Field walk").Press("0840⏎0855⏎1x⏎");

        Assert.Equal((0, "x"), (terminal.Round.Current, terminal.Round.Field));
        Assert.Null(terminal.Round.Rows[0].Text);
    }

    [Fact]
    public void A_value_in_the_wrong_row_is_taken_back_before_it_is_saved()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("⏎302⏎↑⌦");

        Assert.False(terminal.Round.Rows[1].Answered);
        Assert.Contains("is taken back: the row is open", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⎋");
        Assert.Empty(terminal.Entries);
        Assert.Empty(Directory.GetFiles(terminal.Folder));
    }

    [Fact]
    public void What_is_saved_is_not_taken_back_here_and_it_is_said_where()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎⎋").Open("Line round").Press("↑⌦");

        Assert.Contains("in the log c puts it right", terminal.Words, StringComparison.Ordinal);
        Assert.Equal("SL-T1=99.8", terminal.Typed);
    }

    [Fact]
    public void An_end_point_taken_back_leaves_no_other_row_out_of_order()
    {
        using var terminal = new Terminal();

        terminal.Size(120, 40).Open("White liquor titration").Press("34.6⏎29.1⏎39.7⏎↑↑⌦");

        Assert.DoesNotContain("below WL-A", terminal.Screen, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(80, 24)]
    [InlineData(120, 40)]
    public void An_urgent_sentence_is_whole_while_the_next_value_is_typed(int width, int height)
    {
        using var terminal = new Terminal();
        terminal.Size(width, height).Open("Line round").Press("103.4⏎");
        var sentence = Assert.Single(terminal.Round.Spoken).Text;

        terminal.Press("3");

        Assert.Contains(string.Join(' ', sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries)), terminal.Words, StringComparison.Ordinal);
        Assert.Contains("> SL-F1", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_opened_again_keeps_its_urgent_words()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("103.4⏎302⏎⎋⎋").Open("Line round");

        Assert.Contains("1 urgent", terminal.Screen.Split('\n')[0], StringComparison.Ordinal);
        Assert.Contains("103.4 degC urgent: ", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_reading_of_one_that_is_saved_is_an_entry_of_its_own()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎⎋").Open("Line round").Press("↑s");
        Assert.Contains("second reading, the first", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("99.6⏎⏎");

        Assert.Equal(2, terminal.Entries.Count);
        Assert.NotNull(terminal.Entries[1].SecondOf);
    }

    [Fact]
    public void With_something_unsaved_it_is_said_first_and_no_digit_lands_in_the_field()
    {
        using var terminal = new Terminal();

        terminal.Open("Line round").Press("99.8⏎⎋").Open("Line round").Press("302⏎↑↑s");
        Assert.Contains("is saved", terminal.Words, StringComparison.Ordinal);
        terminal.Press("99.6⏎⎋");

        Assert.Equal("", terminal.Round.Field);
    }

    [Fact]
    public void End_points_out_of_order_offer_a_second_titration()
    {
        using var terminal = new Terminal();

        terminal.Open("White liquor titration").Press("34.6⏎29.1⏎39.7⏎⏎");
        Assert.IsType<FindingsPage>(terminal.State.Top);
        terminal.Press("s");

        Assert.Equal("WL-A WL-B WL-C", string.Join(' ', terminal.Round.Rows.Select(r => r.Point.Tag)));
        Assert.NotNull(terminal.Round.SecondOf);
    }
}
