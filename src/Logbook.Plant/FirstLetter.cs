namespace Logbook.Plant;

/// <summary>Words at the beginning of a sentence and inside one. A tag, a unit or an abbreviation keeps its letters: <c>WW-D</c>, <c>pH</c>, <c>TTA</c>.</summary>
public static class FirstLetter
{
    /// <summary>As a sentence begins.</summary>
    public static string Large(string words) => IsOrdinary(words) ? char.ToUpperInvariant(words[0]) + words[1..] : words;

    /// <summary>As it stands inside a sentence.</summary>
    public static string Small(string words) => IsOrdinary(words) ? char.ToLowerInvariant(words[0]) + words[1..] : words;

    /// <summary>True when the first word is letters, small ones after the first.</summary>
    private static bool IsOrdinary(string words) =>
        words.Split(' ')[0].TrimEnd(',', ';', ':', '.') is { Length: > 0 } first && char.IsLetter(first[0]) && first.Skip(1).All(char.IsLower);
}
