using System.Buffers;

namespace Logbook;

/// <summary>
/// A text as a cell that no spreadsheet takes for a formula: what could begin one gets an apostrophe before it, as a person
/// would type it there.
/// </summary>
internal static class CsvCell
{
    private static readonly SearchValues<char> Quoted = SearchValues.Create(",\"\r\n");

    public static string Of(string? text)
    {
        var line = (text ?? "").ReplaceLineEndings(" ");
        var safe = BeginsFormula(line) ? "'" + line : line;
        return safe.AsSpan().IndexOfAny(Quoted) < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }

    /// <summary>The text that a cell stands for.</summary>
    public static string TextOf(string cell) => cell.StartsWith('\'') && BeginsFormula(cell[1..]) ? cell[1..] : cell;

    // '=' and '@' with their full-width forms; a tab is passed over by some programs, and so is a space.
    private static bool BeginsFormula(string text) => text.TrimStart() is [var first, ..] && first is '=' or '+' or '-' or '@' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20';
}
