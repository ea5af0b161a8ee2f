using Logbook.Checks;

namespace Logbook.Tui;

/// <summary>The screen of one terminal.</summary>
public static class Screen
{
    public static int Run(Desk desk, string? by, string draftFolder) => throw new NotImplementedException();
}
