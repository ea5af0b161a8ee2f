namespace Logbook.Tui.Tests;

public sealed class FewColoursTests
{
    [Theory]
    [InlineData("xterm-16color", true)]
    [InlineData("linux", true)]
    [InlineData("vt220", true)]
    [InlineData("rxvt-88color", true)]
    [InlineData("xterm-256color", false)]
    [InlineData("screen", false)]
    [InlineData(null, false)]
    public void A_terminal_that_says_so_gets_no_colours_of_24_bits(string? term, bool poor) => Assert.Equal(poor, Looks.IsPoor(term));

    [Theory]
    [InlineData("xterm-256color", null, true)]
    [InlineData("linux", "", true)]
    [InlineData("xterm-256color", "1", false)]
    [InlineData("vt100", null, false)]
    public void A_terminal_without_colours_is_sent_none(string? term, string? noColour, bool colour) => Assert.Equal(colour, Looks.HasColour(term, noColour));
}
