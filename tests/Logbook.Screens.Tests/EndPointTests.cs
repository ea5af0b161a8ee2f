namespace Logbook.Screens.Tests;

/// <summary>End points of one burette: a later one cannot be below an earlier one, and that is said while it is typed.</summary>
public sealed class EndPointTests
{
    private const string Below = "below WL-A 34.60 mL";

    private static Terminal Titration() => new Terminal().Size(120, 40).Open("White liquor titration");

    private static string Row(Terminal terminal, string tag) => terminal.Screen.Split('\n').First(l => l.Contains(tag + "  White liquor", StringComparison.Ordinal));

    [Fact]
    public void A_later_end_point_below_an_earlier_one_is_said_while_it_is_typed_and_beside_its_row()
    {
        using var terminal = Titration();

        terminal.Press("34.6⏎29.1");
        Assert.Contains("watch: " + Below, Row(terminal, "WL-B"), StringComparison.Ordinal);
        Assert.Contains("it counts on from there, so one of the two is wrong", terminal.Words, StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("watch: " + Below, Row(terminal, "WL-B"), StringComparison.Ordinal);
        terminal.Press("39.7⏎");
        Assert.DoesNotContain("below", Row(terminal, "WL-C"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("34.6⏎3")]
    [InlineData("34.6⏎34")]
    [InlineData("34.6⏎34.")]
    [InlineData("34.6⏎34,6")]
    [InlineData("34.6⏎34.6⏎39.68⏎")]
    public void What_the_next_digit_may_put_right_and_what_is_in_order_is_not_said(string keys)
    {
        using var terminal = Titration();

        Assert.DoesNotContain("below", terminal.Press(keys).Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Put_right_in_either_row_it_is_said_no_more()
    {
        using var terminal = Titration();

        terminal.Press("36.0⏎34.33⏎39.68⏎").Press("↑↑↑");
        Assert.Equal("WL-A", terminal.Round.Row.Point.Tag);
        terminal.Press("29.37⏎");

        Assert.DoesNotContain("below", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("= Causticity of white liquor", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_row_that_is_typed_anew_says_it_too_and_what_hung_on_it_is_no_more_shown()
    {
        using var terminal = Titration();

        terminal.Press("29.37⏎34.33⏎39.68⏎");
        Assert.Contains("= Causticity of white liquor", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("↑↑↑").Press("36.0");
        Assert.Contains("watch: White liquor, end point B 34.33 mL, below WL-A", Row(terminal, "WL-A"), StringComparison.Ordinal);
        terminal.Press("⏎");

        Assert.Contains("watch: below WL-A 36.00 mL", Row(terminal, "WL-B"), StringComparison.Ordinal);
        Assert.DoesNotContain("= Causticity of white liquor", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_entry_says_it_once_with_all_that_was_not_computed()
    {
        using var terminal = Titration();

        terminal.Press("34.6⏎29.1⏎39.7⏎⏎");

        var finding = Assert.Single(Assert.Single(terminal.Entries).Findings);
        Assert.Equal(("calculation.order", "WL-B"), (finding.Code, finding.Point));
        Assert.Contains("not computed: ", finding.Text, StringComparison.Ordinal);
    }

    // By hand: B of 34.3 is more than twice A of 7, so that the hydroxide 2 A - B would be less than none.
    [Fact]
    public void End_points_in_order_that_no_liquor_can_have_are_said_with_the_last_of_them_before_it_is_saved()
    {
        using var terminal = Titration();

        terminal.Press("7⏎34.3⏎39.7");
        Assert.Contains("watch: not computed: b (34.3 mL) is more than twice a (7 mL)", Row(terminal, "WL-C"), StringComparison.Ordinal);
        Assert.Empty(terminal.Entries);
        terminal.Press("⏎");

        Assert.Contains("watch: not computed: b (34.3 mL)", Row(terminal, "WL-B"), StringComparison.Ordinal);
        Assert.Empty(terminal.Entries);
        terminal.Press("↑↑↑").Press("29.37⏎");
        Assert.DoesNotContain("not computed", terminal.Screen, StringComparison.Ordinal);
        Assert.Contains("= Causticity of white liquor", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void At_80_columns_the_row_begins_with_it_and_the_panel_says_why()
    {
        using var terminal = Titration().Size(80, 24);

        terminal.Press("7⏎34.3⏎39.7");

        Assert.Contains("watch: not computed", Row(terminal, "WL-C"), StringComparison.Ordinal);
        Assert.Contains("b (34.3 mL) is more than twice a (7 mL)", terminal.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sample_is_titrated_once_more_from_what_was_said_of_it()
    {
        using var terminal = Titration();

        terminal.Press("7⏎34.3⏎39.7⏎⏎");
        Assert.Contains("s second reading", terminal.Screen, StringComparison.Ordinal);
        terminal.Press("s");

        Assert.Equal("WL-A WL-B WL-C", string.Join(' ', terminal.Round.Rows.Select(r => r.Point.Tag)));
    }
}
