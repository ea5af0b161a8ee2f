namespace Logbook.Tests;

/// <summary>A line longer than the terminal goes on below where its text begins, and nothing of it is lost.</summary>
public sealed class LongLinesAreWrappedOnATerminal
{
    private static readonly string Words = string.Join(' ', Enumerable.Range(1, 60).Select(n => $"word{n}"));

    [Theory]
    [InlineData("order     ", 10)]
    [InlineData("", 2)]
    [InlineData("  ", 4)]
    public void With_an_indent_below_its_text(string label, int indent)
    {
        var rows = WrappedOut.Rows(label + Words, 80).ToList();

        Assert.All(rows, r => Assert.True(r.Length <= 80, r));
        Assert.StartsWith(label + "word1 word2", rows[0], StringComparison.Ordinal);
        Assert.All(rows.Skip(1), r => Assert.Equal(indent, r.Length - r.TrimStart().Length));
        Assert.Equal((label + Words).Trim().Split(' ', StringSplitOptions.RemoveEmptyEntries), string.Join(' ', rows).Split(' ', StringSplitOptions.RemoveEmptyEntries), StringComparer.Ordinal);
        Assert.True(rows.Count < 9, $"{rows.Count} rows");
    }

    [Theory]
    [InlineData("short line")]
    [InlineData("")]
    public void A_line_that_fits_is_left_as_it_is(string line) => Assert.Equal([line], WrappedOut.Rows(line, 80), StringComparer.Ordinal);

    [Fact]
    public void Json_and_a_word_that_is_too_long_are_left_whole()
    {
        var json = "{\"text\": \"" + Words + "\"}";
        Assert.Equal([json], WrappedOut.Rows(json, 80), StringComparer.Ordinal);
        Assert.Equal([new string('x', 200)], WrappedOut.Rows(new string('x', 200), 80), StringComparer.Ordinal);
    }

    [Fact]
    public void A_writer_wraps_whole_lines_and_shows_a_question_at_once()
    {
        using var terminal = new StringWriter { NewLine = "\n" };
        using var output = new WrappedOut(terminal, () => 80) { NewLine = "\n" };

        output.WriteLine("order     " + Words);
        output.Write("name? ");
        output.Flush();

        var rows = terminal.ToString().Split('\n');
        Assert.True(rows.Length > 5);
        Assert.Equal("name? ", rows[^1]);
    }
}
