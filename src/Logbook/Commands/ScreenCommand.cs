using System.CommandLine;
using Logbook.Checks;

namespace Logbook.Commands;

/// <summary>The screen: what the program opens without a command.</summary>
internal static class ScreenCommand
{
    public static int Open(Shell shell, ParseResult parse, string? by) =>
        OpenSite.ForWriting(shell, parse, desk =>
        {
            using var forwarding = ForwardingBeside.Start(shell, parse, desk);
            return Tui.Screen.Run(desk, by, Path.Combine(OpenSite.Folder(shell, parse), "journal"), SigningOptions.Pins(shell, parse));
        });
}
