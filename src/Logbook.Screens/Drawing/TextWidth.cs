using System.Globalization;
using System.Text;
using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>How many columns text takes on a terminal, and how it is cut and broken to fit.</summary>
internal static class TextWidth
{
    public static int Of(string text) => text.EnumerateRunes().Sum(Of);

    /// <summary>At most <paramref name="width"/> columns; what is left out is marked, and begins between two words where that leaves most of the text.</summary>
    public static string Cut(string text, int width)
    {
        if (Of(text) <= width)
        {
            return text;
        }

        var cut = new StringBuilder();
        var used = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            if (used + Of(rune) > width - 1)
            {
                break;
            }

            cut.Append(rune);
            used += Of(rune);
        }

        var space = cut.ToString().LastIndexOf(' ');
        if (space > 0 && cut.Length < text.Length && text[cut.Length] != ' ' && space * 3 >= cut.Length * 2)
        {
            cut.Length = space + 1;
        }

        return width < 1 ? "" : cut.Append('…').ToString();
    }

    /// <summary>The end of a text that is being written, at most <paramref name="width"/> columns of it.</summary>
    public static string Tail(string text, int width)
    {
        var shown = Say.Visible(text);
        return Of(shown) <= width ? shown : "…" + string.Concat(shown.EnumerateRunes().Reverse().Aggregate(
            (Runes: new List<Rune>(), Used: 1),
            (tail, rune) =>
            {
                if (tail.Used + Of(rune) <= width)
                {
                    tail.Runes.Add(rune);
                }

                return (tail.Runes, tail.Used + Of(rune));
            }).Runes.AsEnumerable().Reverse());
    }

    /// <summary>Exactly <paramref name="width"/> columns.</summary>
    public static string Fit(string text, int width)
    {
        var cut = Cut(Say.Visible(text), width);
        return cut + new string(' ', Math.Max(0, width - Of(cut)));
    }

    public static string Right(string text, int width)
    {
        var cut = Cut(Say.Visible(text), width);
        return new string(' ', Math.Max(0, width - Of(cut))) + cut;
    }

    /// <summary>The text in lines of at most <paramref name="width"/> columns, broken between words where that is possible.</summary>
    public static IReadOnlyList<string> Wrap(string text, int width)
    {
        width = Math.Max(width, 1);
        var lines = new List<string>();
        var line = "";
        foreach (var word in Say.Visible(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(w, width)))
        {
            if (line.Length > 0 && Of(line) + 1 + Of(word) > width)
            {
                lines.Add(line);
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        return [.. lines, line];
    }

    /// <summary>At most <paramref name="most"/> lines; the last one says by its mark that more follows.</summary>
    public static IReadOnlyList<string> Wrap(string text, int width, int most)
    {
        var lines = Wrap(text, width);
        return lines.Count <= most ? lines : [.. lines.Take(most - 1), Cut(string.Join(' ', lines.Skip(most - 1)), width)];
    }

    private static IEnumerable<string> Pieces(string word, int width)
    {
        var piece = new StringBuilder();
        var used = 0;
        foreach (var rune in word.EnumerateRunes())
        {
            if (used + Of(rune) > width && used > 0)
            {
                yield return piece.ToString();
                piece.Clear();
                used = 0;
            }

            piece.Append(rune);
            used += Of(rune);
        }

        yield return piece.ToString();
    }

    private static int Of(Rune rune) => Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark ? 0 : IsWide(rune.Value) ? 2 : 1;

    // The blocks that terminals draw two columns wide (Unicode Standard Annex 11, wide and full width).
    private static bool IsWide(int c) => c is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0x303E) or (>= 0x3041 and <= 0xA4CF)
        or (>= 0xA960 and <= 0xA97F) or (>= 0xAC00 and <= 0xD7A3) or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F)
        or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6) or (>= 0x1F300 and <= 0x1FAFF) or (>= 0x20000 and <= 0x3FFFD);
}
