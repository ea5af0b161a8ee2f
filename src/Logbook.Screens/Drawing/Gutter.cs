namespace Logbook.Screens;

/// <summary>A word at the left edge and text beside it, broken into lines: the shape of most of what is said.</summary>
internal static class Gutter
{
    /// <summary>Columns of the word and what parts it from the text.</summary>
    public const int Wide = 11;

    public static IEnumerable<Line> Lines(string word, Look look, string text, int width, int most = int.MaxValue, Look rest = Look.Plain)
    {
        var lines = TextWidth.Wrap(text, width - Wide, most);
        return lines.Select((line, i) => Line.Of(
            i == 0 ? new Span(" " + TextWidth.Fit(word, Wide - 2), look) : new Span(new string(' ', Wide - 1)),
            new Span(" " + line, rest)));
    }
}
