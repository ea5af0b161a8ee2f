namespace Logbook.Screens;

/// <summary>A word at the left edge and text beside it, broken into lines: the shape of most of what is said. No label is split: a longer one shortens its first line.</summary>
internal static class Gutter
{
    /// <summary>Columns of the word and what parts it from the text.</summary>
    public const int Wide = 11;

    private const int Label = Wide - 2;

    public static IEnumerable<Line> Lines(string word, Look look, string text, int width, int most = int.MaxValue, Look rest = Look.Plain)
    {
        var over = Math.Clamp(TextWidth.Of(word) - Label, 0, Math.Max(0, (width / 2) - Wide));
        // What a long label takes of the first line is held free while the text is broken.
        var lines = TextWidth.Wrap(new string('x', over) + text, width - Wide, most);
        return lines.Select((line, i) => Line.Of(
            i == 0 ? new Span(" " + TextWidth.Fit(word, Label + over), look) : new Span(new string(' ', Wide - 1)),
            new Span(" " + (i == 0 ? line[over..] : line), rest)));
    }
}
