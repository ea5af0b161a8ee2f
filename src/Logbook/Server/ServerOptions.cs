using System.CommandLine;
using Logbook.Plant;
using Logbook.Storage.Postgres;

namespace Logbook;

/// <summary>What commands say of the mill's server, and where its connection string is found: never on the command line.</summary>
internal static class ServerOptions
{
    public const string Accepted = "LOGBOOK_SERVER holds a connection string, LOGBOOK_SERVER_FILE names a file with one, or it is the file 'server' of the site folder or of the folder logbook in your settings";

    public static readonly Option<bool> Server = new("--server") { Description = "Of the lines that the mill's server holds, for people with a reading role there." };

    public static readonly Option<string[]> Line = new("--line") { Description = "With --server: only this line, may be repeated; all unless said.", HelpName = "ID", DefaultValueFactory = _ => [] };

    public static void AddTo(Command command)
    {
        command.Add(Server);
        command.Add(Line);
    }

    /// <summary>Where the server is; a mistake when nobody says, or when what is said cannot be used.</summary>
    public static Parsed<ServerAddress> Address(Shell shell, string siteFolder) =>
        shell.ServerVariable is { Length: > 0 } text ? ServerAddress.Of(text, "LOGBOOK_SERVER")
        : File(shell, siteFolder) is { } file ? ServerAddress.OfFile(file)
        : new(null, [Mistake.Typed("no server is named", Accepted)]);

    /// <summary>True when a site or a person has named a server.</summary>
    public static bool IsNamed(Shell shell, string siteFolder) => shell.ServerVariable is { Length: > 0 } || File(shell, siteFolder) is not null;

    private static string? File(Shell shell, string siteFolder)
    {
        if (shell.ServerFileVariable is { Length: > 0 } named)
        {
            return shell.FullPath(named);
        }

        string[] usual = [Path.Combine(siteFolder, "server"), .. shell.Settings.Length > 0 ? [Path.Combine(shell.Settings, "logbook", "server")] : Array.Empty<string>()];
        return Array.Find(usual, System.IO.File.Exists);
    }
}
