namespace Logbook.Screens;

/// <summary>A line of text as it is written and drawn, everywhere alike.</summary>
internal static class TextLine
{
    private const int Longest = 400;

    public static bool IsWritten(Keystroke key) => key.Name == KeyName.Written && key.Rune.Value >= ' ';

    public static Line Draw(string text, int width) => Line.Of(new Span(" > "), new Span(TextWidth.Tail(text, Math.Max(2, width - 5)) + "_", Look.Field));

    public static Next Write(Session session, string text, Keystroke key, Func<string, Page> with)
    {
        var written = key.Name switch
        {
            KeyName.Delete => "",
            KeyName.Backspace => Shorter(text),
            _ => text + key.Rune,
        };
        return Next.Of(written.Length > Longest ? session.Say($"{Longest} characters are the most") : session.Put(with(written)));
    }

    /// <summary>On a slow line a character may arrive in two halves that are no characters: it is typed again, not saved.</summary>
    public static string? WhyNot(string text) => text.Contains('\uFFFD', StringComparison.Ordinal) ? "a character did not arrive whole (shown as \uFFFD): take it back and type it again" : null;

    /// <summary>The text with pasted words behind it, as long as a line may be.</summary>
    public static string Joined(string text, string pasted) => string.Concat((text + pasted).Take(Longest));

    public static string Shorter(string text) => text.Length == 0 ? "" : text[..^(char.IsLowSurrogate(text[^1]) && text.Length > 1 ? 2 : 1)];
}
