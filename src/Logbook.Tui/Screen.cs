using Logbook.Checks;

namespace Logbook.Tui;

/// <summary>The program's screen: Now, Round and Log on a terminal.</summary>
public static class Screen
{
    /// <summary>Opens the screen and comes back when the person leaves it or the terminal goes away.</summary>
    /// <param name="desk">Where entries are written from.</param>
    /// <param name="by">Who is typing; asked on the screen when null.</param>
    /// <param name="draftFolder">Where this terminal keeps what was typed and is not yet in the journal.</param>
    /// <returns>The exit code: 0, or 69 when there is no terminal that can draw.</returns>
    public static int Run(Desk desk, string? by, string draftFolder) => throw new NotImplementedException();
}
