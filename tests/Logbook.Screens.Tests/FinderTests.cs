namespace Logbook.Screens.Tests;

public sealed class FinderTests
{
    [Theory]
    [InlineData("hatch", "point", "SL-HATCH")]
    [InlineData("lime screw", "equipment", "lime-screw")]
    [InlineData("handover", "key", "h handover")]
    [InlineData("not taken", "key", "n not taken")]
    [InlineData("2", "record", "(#2)")]
    public void Anything_is_found_by_a_part_of_its_name(string text, string what, string name)
    {
        using var terminal = new Terminal();

        terminal.Press("/" + text);

        var found = Found.All(terminal.State, text)[0];
        Assert.Equal((what, name), (found.What, found.Name));
        Assert.Contains(name, terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void What_begins_with_the_word_stands_before_what_only_has_it()
    {
        using var terminal = new Terminal();

        string[] found = [.. Found.OfPoints(terminal.State, "slaker", GraphPage.Open).Select(f => f.Detail)];

        Assert.StartsWith("Slaker", found[0], StringComparison.Ordinal);
        Assert.Contains(found, d => !d.StartsWith("Slaker", StringComparison.Ordinal));
        Assert.Equal(found.OrderByDescending(d => d.StartsWith("Slaker", StringComparison.Ordinal)), found, StringComparer.Ordinal);
    }

    [Fact]
    public void A_record_opens_by_its_number_and_one_that_is_not_there_says_so()
    {
        using var terminal = new Terminal();

        Assert.Contains("the last record is 2", terminal.Press("/99⏎").Screen, StringComparison.Ordinal);
        terminal.Press("⌦2⏎");

        Assert.Contains("Record 2: entry", terminal.Screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_of_Now_does_there_what_it_does()
    {
        using var terminal = new Terminal();

        terminal.Press("/types a round⏎");

        Assert.IsType<ChoosePage>(terminal.State.Top);
    }

    [Fact]
    public void Words_that_nothing_is_called_by_are_looked_for_in_the_records()
    {
        using var terminal = new Terminal(before: t => Checks.Writing.Remark(t.Desk, "belt squeals", "lime-screw", null, "op1"));

        terminal.Press("/squeals⏎");

        Assert.Contains("belt squeals", Assert.Single(((LogPage)terminal.State.Top).Shown).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_is_found_by_what_it_does()
    {
        using var terminal = new Terminal();

        Assert.Equal("graph", Assert.Single(Found.All(terminal.State, "the point under the mark"), f => f.What == "key").Name[2..]);
    }
}
