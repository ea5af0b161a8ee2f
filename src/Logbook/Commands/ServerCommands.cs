using System.CommandLine;
using System.Globalization;
using Logbook.Storage.Postgres;

namespace Logbook.Commands;

/// <summary>The mill's server, for its administrator: its tables, and which role forwards which line.</summary>
internal static class ServerCommands
{
    private static readonly Rows<ServerLine> Listing = new("lines",
        new("line", l => l.Chain), new("records", l => l.Head.Seq), new("head", l => l.Head.Hash), new("received", l => l.Received));

    public static Command Make(Shell shell) => new("server", $"The mill's PostgreSQL that lines are forwarded to. Who asks, and where it is: {ServerOptions.Accepted}.") { Init(shell), Admit(shell), Lines(shell) };

    private static Command Init(Shell shell)
    {
        var command = new Command("init", "Makes the tables, or brings older ones forward: all or nothing. Needs a role that may create schemas and roles.");
        command.SetAction(parse => ServerReading.With(shell, parse, server =>
        {
            var (before, now) = ServerSchema.Bring(server);
            shell.Out.WriteLine(before == now
                ? string.Create(CultureInfo.InvariantCulture, $"{server.Address}: the tables are up to date, step {now}")
                : string.Create(CultureInfo.InvariantCulture, $"{server.Address}: from step {before} to step {now}. Readers are granted logbook_reader; a line is admitted with: logbook server admit LINE --forwarder ROLE"));
            return ExitCode.Done;
        }));
        return command;
    }

    private static Command Admit(Shell shell)
    {
        var line = new Argument<string>("LINE") { Description = "The line's id, as its site.toml has it." };
        var role = new Option<string>("--forwarder") { Description = "The server's role that its terminal comes with; it may add records of this line and do nothing else.", HelpName = "ROLE", Required = true };
        var command = new Command("admit", "Lets a role forward a line.") { line, role };
        command.SetAction(parse => ServerReading.With(shell, parse, server =>
        {
            var chain = parse.GetValue(line)!;
            if (chain.Length is 0 or > 64 || !chain.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
            {
                return shell.Refuse($"'{chain}' is no id of a line", "letters, digits and '-'");
            }

            ServerSchema.Admit(server, chain, parse.GetValue(role)!);
            shell.Out.WriteLine($"{chain} is admitted; {parse.GetValue(role)} may forward it");
            return ExitCode.Done;
        }));
        return command;
    }

    private static Command Lines(Shell shell)
    {
        var json = Options.Json();
        var command = new Command("lines", $"The lines that were admitted, and what has arrived of each. {Listing.Keys}") { json };
        command.SetAction(parse => ServerReading.With(shell, parse, server => Listing.Print(shell, parse.GetValue(json), server.Lines(), "no line is admitted yet")));
        return command;
    }
}
