using Logbook.Screens;
using Terminal.Gui.Drawing;
using Attribute = Terminal.Gui.Drawing.Attribute;
using Color = Terminal.Gui.Drawing.Color;

namespace Logbook.Tui;

/// <summary>
/// Looks as a terminal shows them. Without colour the terminal's own two are used, and weight, reverse and underline tell
/// looks apart; the words say the same in either.
/// </summary>
internal sealed class Looks(bool colour)
{
    public static Looks OfEnvironment() => new(HasColour(Environment.GetEnvironmentVariable("TERM"), Environment.GetEnvironmentVariable("NO_COLOR")));

    /// <summary>No colour when NO_COLOR is set to anything, nor on a terminal of the VT line: what it does not know it leaves out, and what can hurt would stand there like everything else.</summary>
    public static bool HasColour(string? term, string? noColour) => string.IsNullOrEmpty(noColour) && term?.StartsWith("vt", StringComparison.Ordinal) != true;

    /// <summary>The terminal says by its name that it knows sixteen colours at most.</summary>
    public static bool IsPoor(string? term) => term is not null && (term is "linux" or "ansi" or "xterm-color"
        || term.EndsWith("16color", StringComparison.Ordinal) || term.EndsWith("8color", StringComparison.Ordinal) || term.StartsWith("vt", StringComparison.Ordinal));

    // As xterm's own: the toolkit's red is lighter, and white on it has less than 4.5 to 1.
    private static readonly Color Red = new(190, 0, 0);

    public Attribute Of(Look look) => look switch
    {
        Look.Strong => Own(TextStyle.Bold),
        Look.Faint => Own(TextStyle.Faint),
        Look.Note => Own(TextStyle.Underline),
        Look.Watch => colour ? new Attribute(Color.Black, Color.BrightYellow) : Own(TextStyle.Bold | TextStyle.Underline),
        Look.Urgent => colour ? new Attribute(Color.White, Red, TextStyle.Bold) : Own(TextStyle.Bold | TextStyle.Reverse),
        Look.Hurts => colour ? new Attribute(Color.Black, Color.White, TextStyle.Bold) : Own(TextStyle.Bold | TextStyle.Reverse),
        Look.Field or Look.Chosen => Own(TextStyle.Reverse),
        _ => Own(TextStyle.None),
    };

    /// <summary>The terminal's own colours.</summary>
    private static Attribute Own(TextStyle style) => new(Color.None, Color.None, style);
}
