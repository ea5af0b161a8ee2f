namespace Logbook.Screens;

/// <summary>A word at the left edge and text beside it, broken into lines: the shape of most of what is said.</summary>
internal static class Gutter
{
    private const int Wide = 10;

    public static IEnumerable<Line> Lines(string word, Look look, string text, int width, int most = int.MaxValue, Look rest = Look.Plain)
    {
        var lines = TextWidth.Wrap(text, width - Wide - 1, most);
        return lines.Select((line, i) => Line.Of(
            i == 0 ? new Span(" " + TextWidth.Fit(word, Wide - 2), look) : new Span(new string(' ', Wide - 1)),
            new Span(" " + line, rest)));
    }
}
