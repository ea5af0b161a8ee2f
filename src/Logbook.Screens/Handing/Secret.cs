using System.Text;

namespace Logbook.Screens;

/// <summary>What is typed and never drawn, printed or kept: no text of it leaves but to where a PIN is checked.</summary>
internal sealed class Secret
{
    public static readonly Secret Empty = new("");

    private const int Longest = 64;

    private readonly string _text;

    private Secret(string text) => _text = text;

    public bool IsEmpty => _text.Length == 0;

    public string Reveal() => _text;

    public Secret With(string more) => new(string.Concat((_text + more).Take(Longest)));

    public Secret Shorter() => new(TextLine.Shorter(_text));

    /// <summary>What is said of a PIN that was typed where words are asked for, without telling any of it; null when it is none.</summary>
    public static string? Early(string text) => text.Trim() is { Length: >= 4 and <= 12 } digits && digits.All(char.IsAsciiDigit)
        ? "that looks like a PIN: it is asked for at the end, and nothing of this is kept"
        : null;

    public override string ToString() => "not shown";
}
