using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>The screen: what the program opens without a command.</summary>
internal static class ScreenCommand
{
    public static int Open(Shell shell, ParseResult parse, string? by)
    {
        var folder = OpenSite.Folder(shell, parse);
        return shell.Answers && !OpenSite.IsSite(folder)
            ? FirstTime(shell, folder)
            : Beside(shell, folder, by, SigningOptions.Pins(shell, parse), (quiet, serve) => OpenSite.ForWriting(quiet, parse, desk =>
            {
                using var forwarding = ForwardingBeside.Start(quiet, parse, desk);
                return serve(desk);
            }));
    }

    /// <summary>The screen with a site that is opened beside it. What that says on the error stream is said when the terminal is free again.</summary>
    public static int Beside(Shell shell, string folder, string? by, Pins pins, Func<Shell, Func<Desk, int>, int> open)
    {
        using var said = new StringWriter();
        var told = TextWriter.Synchronized(said);
        try
        {
            return Tui.Screen.Run(serve => open(shell with { Error = told }, serve), by, Path.Combine(folder, "journal"), pins, said.ToString, shell.Clock, shell.Out);
        }
        finally
        {
            shell.Error.Write(said.ToString());
        }
    }

    /// <summary>Nothing is here yet: a person is offered the demo or a new site, and is never left before an empty screen.</summary>
    private static int FirstTime(Shell shell, string folder)
    {
        shell.Out.WriteLine(Say.Visible($"There is no site in {folder}."));
        shell.Out.WriteLine("  1  try it: an invented mill with two weeks of history, in a folder of its own");
        shell.Out.WriteLine("  2  begin a site here: files to fill in, with fifteen systems of such a line");
        shell.Out.WriteLine("  3  neither; another folder is opened with: logbook --site DIR");
        while (true)
        {
            shell.Out.Write("1, 2 or 3, then Enter: ");
            switch (shell.In.ReadLine()?.Trim())
            {
                case "1":
                    return CommandLine.Run(["demo"], shell);
                case "2":
                    return CommandLine.Run(["init", folder], shell);
                case null or "3":
                    return shell.Refuse($"{folder} holds no {SiteFiles.SiteToml}", "a site's folder: --site DIR, or LOGBOOK_SITE; logbook demo makes one to try, logbook init DIR a new one");
                case var other:
                    shell.Out.WriteLine(Say.Visible($"'{other}' is none of them"));
                    break;
            }
        }
    }
}
