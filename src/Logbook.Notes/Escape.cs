using System.Net;
using System.Text;
using Logbook.Handover;

namespace Logbook.Notes;

/// <summary>Makes a value harmless in the note's format. Control characters are made visible in every one.</summary>
internal static class Escape
{
    private const string MarkdownMarks = "\\`*_[]<>|&~";
    private const string MarkdownBeginnings = "#+-=";

    public static string For(NoteFormat format, string text) => format switch
    {
        NoteFormat.Html => Html(text),
        NoteFormat.Markdown => Markdown(Say.Visible(text)),
        _ => Say.Visible(text),
    };

    public static string Html(string text) => WebUtility.HtmlEncode(Say.Visible(text));

    private static string Markdown(string text)
    {
        var escaped = new StringBuilder(text.Length + 16);
        // Mail and web addresses are left as words; what could begin a heading, a list or a rule is not.
        var numbered = text.TakeWhile(char.IsAsciiDigit).Count();
        for (var i = 0; i < text.Length; i++)
        {
            var begins = (i == 0 && MarkdownBeginnings.Contains(text[i], StringComparison.Ordinal))
                || (i == numbered && i > 0 && text[i] is '.' or ')' && i == numbered);
            if (begins || MarkdownMarks.Contains(text[i], StringComparison.Ordinal))
            {
                escaped.Append('\\');
            }

            escaped.Append(text[i]);
        }

        return escaped.ToString();
    }
}
