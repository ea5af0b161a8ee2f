using System.Globalization;
using System.Text;

namespace Logbook.Notes;

/// <summary>
/// Plain text in 72 columns, so that it prints on any paper. A line that is too long goes on below, under the place where
/// its words began: after the label when it has one.
/// </summary>
internal static class Columns
{
    public const int Width = 72;

    // A label takes no more than this; two spaces further right are not the end of a label.
    private const int LabelEnds = 26;

    public static string Wrap(string text) => string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').SelectMany(Lines));

    private static IEnumerable<string> Lines(string line)
    {
        line = line.TrimEnd();
        if (Count(line) <= Width)
        {
            yield return line;
            yield break;
        }

        var hang = Hang(line);
        var current = new StringBuilder(line[..hang]);
        var fresh = true;
        foreach (var word in line[hang..].Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(w, Width - hang)))
        {
            if (!fresh && Count(current.ToString()) + 1 + Count(word) > Width)
            {
                yield return current.ToString().TrimEnd();
                current.Clear().Append(' ', hang);
                fresh = true;
            }

            current.Append(fresh ? "" : " ").Append(word);
            fresh = false;
        }

        yield return current.ToString();
    }

    /// <summary>Where the words begin: after the first gap of two spaces behind a label, else after the indent.</summary>
    private static int Hang(string line)
    {
        var indent = line.Length - line.TrimStart().Length;
        var gap = line.IndexOf("  ", Math.Min(indent, line.Length), StringComparison.Ordinal);
        if (gap < 0 || gap > LabelEnds)
        {
            return Math.Min(indent, LabelEnds);
        }

        var end = gap;
        while (end < line.Length && line[end] == ' ')
        {
            end++;
        }

        return end <= LabelEnds + 2 ? end : Math.Min(indent, LabelEnds);
    }

    /// <summary>A word longer than the room for it is cut; nothing of it is lost.</summary>
    private static IEnumerable<string> Pieces(string word, int room)
    {
        var piece = new StringBuilder();
        var width = 0;
        foreach (var letter in Letters(word))
        {
            if (width + Count(letter) > room && width > 0)
            {
                yield return piece.ToString();
                piece.Clear();
                width = 0;
            }

            piece.Append(letter);
            width += Count(letter);
        }

        yield return piece.ToString();
    }

    private static IEnumerable<string> Letters(string text)
    {
        var letters = StringInfo.GetTextElementEnumerator(text);
        while (letters.MoveNext())
        {
            yield return letters.GetTextElement();
        }
    }

    /// <summary>Columns that a text takes: a letter with its marks is one, a wide one two.</summary>
    public static int Count(string text) => Letters(text).Sum(letter => IsWide(letter.EnumerateRunes().First().Value) ? 2 : 1);

    // East Asian wide and fullwidth blocks and emoji, in broad strokes.
    private static bool IsWide(int rune) => rune is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3)
        or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6) or (>= 0x1F300 and <= 0x1FAFF) or >= 0x20000;
}
