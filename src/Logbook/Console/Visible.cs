using System.Globalization;
using System.Text;

namespace Logbook;

/// <summary>Text from people and files, with what a terminal would act on made visible.</summary>
internal static class Visible
{
    public static string Of(string text)
    {
        if (!text.Any(Hidden))
        {
            return text;
        }

        var shown = new StringBuilder(text.Length + 8);
        foreach (var c in text)
        {
            _ = !Hidden(c) ? shown.Append(c)
                : c < ' ' ? shown.Append((char)(0x2400 + c))
                : shown.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
        }

        return shown.ToString();
    }

    private static bool Hidden(char c) =>
        char.IsControl(c) || CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
