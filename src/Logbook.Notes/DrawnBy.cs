using System.Security.Cryptography;
using System.Text;

namespace Logbook.Notes;

/// <summary>Which template drew a note, at its foot: the program puts it there, so that no template can leave it out.</summary>
internal static class DrawnBy
{
    private const int HashDigits = 12;

    public static string Shipped(TemplateName name) => $"Drawn by the shipped template {name.File}.";

    /// <param name="source">The template's text; two prints by one template show one hash, that of sha256sum.</param>
    public static string Own(string path, string source) =>
        $"Drawn by the site's own template {Path.GetFileName(path)}, SHA-256 {Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(source)))[..HashDigits]}...: it may say what the journal does not.";

    public static string Under(string printed, string words, NoteFormat format) => format switch
    {
        NoteFormat.Html when printed.LastIndexOf("</body>", StringComparison.OrdinalIgnoreCase) is > 0 and var end => printed[..end] + Html(words) + printed[end..],
        NoteFormat.Html => $"{printed}\n{Html(words)}",
        NoteFormat.Markdown => $"{printed.TrimEnd()}\n\n{Escape.For(format, words)}\n",
        _ => $"{printed.TrimEnd('\n')}\n{Escape.For(format, words)}\n",
    };

    private static string Html(string words) => $"<p class=\"drawn-by\"><small>{Escape.Html(words)}</small></p>\n";
}
