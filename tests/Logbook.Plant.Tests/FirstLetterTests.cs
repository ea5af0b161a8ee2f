namespace Logbook.Plant.Tests;

public class FirstLetterTests
{
    [Theory]
    [InlineData("weak wash density", "Weak wash density")]
    [InlineData("burette, and less from others", "Burette, and less from others")]
    [InlineData("a balance", "A balance")]
    [InlineData("WW-D reads too high", "WW-D reads too high")]
    [InlineData("pH of the sump", "pH of the sump")]
    [InlineData("uS/cm at 25 degC", "uS/cm at 25 degC")]
    [InlineData("TTA", "TTA")]
    [InlineData("ww-tta of two ways", "ww-tta of two ways")]
    [InlineData("h2s at the sump", "h2s at the sump")]
    [InlineData("'wl' as the site has it", "'wl' as the site has it")]
    [InlineData("", "")]
    public void A_sentence_begins_with_a_large_letter_and_a_tag_with_its_own(string words, string begun) => Assert.Equal(begun, FirstLetter.Large(words));

    [Theory]
    [InlineData("Weak wash density", "weak wash density")]
    [InlineData("A balance", "a balance")]
    [InlineData("TTA of weak wash", "TTA of weak wash")]
    [InlineData("H2S at the sump", "H2S at the sump")]
    [InlineData("CaO that reacted", "CaO that reacted")]
    [InlineData("", "")]
    public void Inside_a_sentence_it_is_small_and_an_abbreviation_as_it_was(string words, string inside) => Assert.Equal(inside, FirstLetter.Small(words));
}
