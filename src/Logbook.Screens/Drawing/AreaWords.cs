namespace Logbook.Screens;

/// <summary>The plant's areas in words.</summary>
internal static class AreaWords
{
    public static string Of(string area)
    {
        var words = area.Replace('-', ' ');
        return words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
    }
}
