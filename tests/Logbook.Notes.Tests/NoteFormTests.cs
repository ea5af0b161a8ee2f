using System.Text.RegularExpressions;
using System.Xml.Linq;
using CsCheck;

namespace Logbook.Notes.Tests;

public partial class NoteFormTests
{
    [Fact]
    public void Text_never_exceeds_72_columns_nor_holds_a_control_character() => Notes.Hostile.Sample(text =>
    {
        var note = Notes.Write(Notes.With(text), NoteFormat.Text);

        Assert.All(note.Split('\n'), line => Assert.True(Columns.Count(line) <= 72, line));
        Assert.DoesNotContain(note, c => char.IsControl(c) && c != '\n');
    }, iter: 200);

    [Fact]
    public void Wrapping_loses_no_letter() => Gen.String[Gen.Char['!', '~'], 1, 400].Sample(word =>
        Assert.Contains(word, string.Concat(Columns.Wrap(" label       " + word).Split('\n').Select(l => l.Trim())), StringComparison.Ordinal));

    [Fact]
    public void A_long_line_goes_on_under_the_beginning_of_its_words()
    {
        var lines = Columns.Wrap(" locked      " + string.Join(' ', Enumerable.Repeat("word", 30))).Split('\n');

        Assert.True(lines.Length > 1);
        Assert.All(lines.Skip(1), line => Assert.StartsWith("             word", line, StringComparison.Ordinal));
    }

    [Fact]
    public void Html_keeps_its_own_elements_and_no_others_whatever_the_text_says() => Notes.Hostile.Sample(text =>
    {
        var hostile = Notes.Write(Notes.With(text, Notes.Trend(text, 1, 2, 3)), NoteFormat.Html);
        var tame = Notes.Write(Notes.With("word", Notes.Trend("word", 1, 2, 3)), NoteFormat.Html);

        Assert.Equal(Elements().Matches(tame).Select(m => m.Value), Elements().Matches(hostile).Select(m => m.Value), StringComparer.Ordinal);
        Assert.DoesNotContain(hostile, c => char.IsControl(c) && c != '\n');
    }, iter: 200);

    [Fact]
    public void Html_holds_no_script_and_asks_for_nothing_outside()
    {
        var note = Notes.Write(Notes.With("<script>alert(1)</script><img src=x onerror=alert(1)>", Notes.Trend(1, 2, 3)), NoteFormat.Html);

        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt;", note, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", note, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", note, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<link", note, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("url(", note, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(["http://www.w3.org/2000/svg"], Addresses().Matches(note).Select(m => m.Value).Distinct(StringComparer.Ordinal), StringComparer.Ordinal); // a name of XML, nothing is fetched
    }

    [Fact]
    public void Markdown_of_hostile_text_opens_no_html_no_link_and_no_new_line() => Notes.Hostile.Sample(text =>
    {
        var hostile = Notes.Write(Notes.With(text), NoteFormat.Markdown);
        var tame = Notes.Write(Notes.With("word"), NoteFormat.Markdown);

        Assert.Equal(tame.Split('\n').Length, hostile.Split('\n').Length);
        Assert.DoesNotMatch(@"(?<!\\)(\\\\)*[<\[]", hostile);
    }, iter: 200);

    [Theory]
    [InlineData("# Title", "\\# Title")]
    [InlineData("- item", "\\- item")]
    [InlineData("12. item", "12\\. item")]
    [InlineData("101.5 degC", "101\\.5 degC")]
    [InlineData("a*b_c", "a\\*b\\_c")]
    [InlineData("SL-T1 (#12)", "SL-T1 (#12)")]
    public void Markdown_marks_are_words(string text, string expected) => Assert.Equal(expected, Escape.For(NoteFormat.Markdown, text));

    [Fact]
    public void A_picture_is_well_formed_whatever_its_values_and_words() =>
        Gen.Select(Gen.Double[-1e6, 1e6].Array[1, 40], Notes.Hostile).Sample((values, unit) =>
        {
            var picture = XDocument.Parse(TrendPicture.Of(Notes.Trend(unit, values)));

            var svg = XNamespace.Get("http://www.w3.org/2000/svg");
            Assert.Equal(values.Length, picture.Descendants(svg + "circle").Count());
            Assert.NotEmpty(picture.Root!.Element(svg + "desc")!.Value);
            Assert.All(picture.Descendants(svg + "circle"), c => Assert.InRange((double)c.Attribute("cy")!, 0, 190));
        }, iter: 200);

    [Fact]
    public void A_picture_names_every_limit_and_has_its_words_beside_it()
    {
        var picture = TrendPicture.Of(Notes.Trend(101, 102, 103.4));

        Assert.Contains("urgent high 103.2</text>", picture, StringComparison.Ordinal);
        Assert.Contains("watch high 102.6</text>", picture, StringComparison.Ordinal);
        Assert.Contains("watch low 98, below</text>", picture, StringComparison.Ordinal);
        Assert.Contains("3 values, first 101 at 19:00, lowest 101 at 19:00, highest 103.4 at 21:00, last 103.4 at 21:00", picture, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_format_carries_the_head_the_standing_line_and_that_it_is_not_signed() => Assert.All(Enum.GetValues<NoteFormat>(), format =>
    {
        var note = Notes.Write(Notes.With("word"), format).ReplaceLineEndings(" ");

        Assert.Contains(new string('7', 64), note, StringComparison.Ordinal);
        Assert.Contains("12 records", note, StringComparison.Ordinal);
        Assert.Contains("Not signed: draft", note, StringComparison.Ordinal);
        Assert.Contains("This note only reminds;", note, StringComparison.Ordinal);
        Assert.Contains("DRAFT", note, StringComparison.Ordinal);
    });

    [GeneratedRegex("<[a-z/!][a-z0-9]*", RegexOptions.NonBacktracking)]
    private static partial Regex Elements();

    [GeneratedRegex("https?://[^\"' <]*", RegexOptions.NonBacktracking)]
    private static partial Regex Addresses();
}
