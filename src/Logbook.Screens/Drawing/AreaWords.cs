using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>The plant's areas in words.</summary>
internal static class AreaWords
{
    public static string Of(string area) => FirstLetter.Large(area.Replace('-', ' '));
}
