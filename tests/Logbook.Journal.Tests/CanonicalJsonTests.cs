using System.Text;
using System.Text.Json;
using CsCheck;

namespace Logbook.Journal.Tests;

/// <summary>Against RFC 8785, JSON Canonicalization Scheme (IETF, June 2020).</summary>
public sealed class CanonicalJsonTests
{
    [Fact]
    public void Strings_and_literals_of_the_published_sample_have_the_published_bytes()
    {
        // RFC 8785 section 3.2.2, the sample object; its numbers are fractions, which the journal writes as text, so they are
        // left out here. The expected bytes are those of section 3.2.4 for the same members.
        const string sample = """{ "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false] }""";

        const string published =
            "7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72 75 65 2c 66 61 6c 73 65 5d 2c " +
            "22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 5c 75 30 30 30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d";
        Assert.Equal(published.Replace(" ", "", StringComparison.Ordinal), Convert.ToHexStringLower(Canonical(sample)));
    }

    [Fact]
    public void Members_stand_in_the_published_order()
    {
        // RFC 8785 section 3.2.3: the sorting sample and the order of its values.
        const string sample = """
            {"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One",
             "\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}
            """;

        const string published =
            "Carriage Return, One, Control, Latin Small Letter O With Diaeresis, Euro Sign, Emoji: Grinning Face, Hebrew Letter Dalet With Dagesh";
        using var sorted = JsonDocument.Parse(Canonical(sample));
        Assert.Equal(published, string.Join(", ", sorted.RootElement.EnumerateObject().Select(member => member.Value.GetString())));
    }

    [Theory]
    [InlineData("\b", "\\b")]
    [InlineData("\t", "\\t")]
    [InlineData("\n", "\\n")]
    [InlineData("\f", "\\f")]
    [InlineData("\r", "\\r")]
    [InlineData("\u0001", "\\u0001")]
    [InlineData("\u001f", "\\u001f")]
    [InlineData("\u007f", "\u007f")]
    [InlineData("<>&'/+", "<>&'/+")]
    [InlineData("°³µÅ€\u2028", "°³µÅ€\u2028")]
    public void A_string_is_escaped_as_section_3_2_2_2_says_and_no_further(string text, string written)
    {
        Assert.Equal($"\"{written}\"", Encoding.UTF8.GetString(Canonical(JsonSerializer.Serialize(text))));
    }

    [Theory]
    [InlineData("1.5")]
    [InlineData("1e3")]
    [InlineData("9007199254740992")]
    [InlineData("\"\\ud800\"")]
    [InlineData("{\"\\udc00\":1}")]
    public void A_fraction_an_integer_beyond_2_to_the_53_and_half_a_character_are_refused(string json)
    {
        Assert.Throws<FormatException>(() => Canonical(json));
    }

    [Theory]
    [InlineData("-0", "0")] // RFC 8785 section 3.2.2.3 takes over ECMAScript's rule: minus zero is written 0
    [InlineData("9007199254740991", "9007199254740991")]
    [InlineData(" [ 1 , -2 ] ", "[1,-2]")]
    [InlineData("[ { } , [ ] ]", "[{},[]]")]
    public void Integers_are_written_without_ornament(string json, string written)
    {
        Assert.Equal(written, Encoding.UTF8.GetString(Canonical(json)));
    }

    [Fact]
    public void What_is_canonical_stays_as_it_is()
    {
        Drafts.Any.Sample(draft =>
        {
            var bytes = JournalRecord.Seal(draft, Head.Empty).Bytes.ToArray();
            Assert.Equal(bytes, Canonical(Encoding.UTF8.GetString(bytes)));
        });
    }

    private static byte[] Canonical(string json)
    {
        using var document = JsonDocument.Parse(json);
        return CanonicalJson.Write(document.RootElement);
    }
}
