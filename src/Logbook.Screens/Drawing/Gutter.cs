namespace Logbook.Screens;

/// <summary>A word at the left edge and text beside it, broken into lines: the shape of most of what is said.</summary>
internal static class Gutter
{
    /// <summary>Columns of the word and what parts it from the text.</summary>
    public const int Wide = 11;

    public static IEnumerable<Line> Lines(string word, Look look, string text, int width, int most = int.MaxValue, Look rest = Look.Plain)
    {
        (word, text) = Fitting(word, text);
        var lines = TextWidth.Wrap(text, width - Wide, most);
        return lines.Select((line, i) => Line.Of(
            i == 0 ? new Span(" " + TextWidth.Fit(word, Wide - 2), look) : new Span(new string(' ', Wide - 1)),
            new Span(" " + line, rest)));
    }

    /// <summary>Of several words those that have no room at the edge begin the text: nothing is cut.</summary>
    private static (string Word, string Text) Fitting(string word, string text) =>
        TextWidth.Of(word) <= Wide - 2 || word.LastIndexOf(' ', Math.Min(Wide - 2, word.Length - 1)) is not (> 0 and var at) ? (word, text) : (word[..at], $"{word[(at + 1)..]} {text}");
}
