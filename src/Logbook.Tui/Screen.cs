using Logbook.Checks;
using Logbook.Handover;
using Logbook.Screens;

namespace Logbook.Tui;

/// <summary>The program's screen: Now, Round and Log on a terminal.</summary>
public static class Screen
{
    /// <summary>Opens the screen and comes back when the person leaves it or the terminal goes away.</summary>
    /// <param name="desk">Where entries are written from.</param>
    /// <param name="by">Who is typing; asked on the screen when null.</param>
    /// <param name="draftFolder">Where this terminal keeps what was typed and is not yet in the journal.</param>
    /// <param name="pins">By which people sign.</param>
    /// <returns>The exit code: 0, or 69 when there is no terminal that can draw.</returns>
    public static int Run(Desk desk, string? by, string draftFolder, Pins pins)
    {
        if (Host.WhyNot() is { } why)
        {
            Console.Error.WriteLine($"{why}; the commands work without a screen: logbook --help");
            return Host.NoTerminal;
        }

        using var drafts = new DraftFolder(draftFolder, desk.Terminal);
        var conversation = new Conversation(desk, by, drafts, pins);
        return Host.Run(() => new Surface(conversation, Looks.OfEnvironment()), text => conversation.Take(new Pasted(text)));
    }
}
