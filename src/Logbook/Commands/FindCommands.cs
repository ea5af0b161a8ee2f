using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Search in the log, and what changed since a person was last here.</summary>
internal static class FindCommands
{
    private static readonly Rows<Change> Changes = new("since",
        new("on", c => c.On), new("what", c => c.What), new("at", c => c.At), new("by", c => c.By), new("seq", c => c.Seq), new("text", c => c.Text));

    // The words stand in no index: each record is read and put in words, and a mill's years are millions of them.
    private const int ServerDays = 31;

    public static Command Find(Shell shell)
    {
        var text = new Argument<string>("TEXT") { Description = "Words that all must stand in the line; capitals do not matter." };
        var (from, to, json, asOf) = (Options.From(), Options.To(), Options.Json(), Options.AsOf());
        var command = new Command("find", $"Records that hold the words, of the whole journal unless said; with --server of the last {ServerDays} days. {LogCommand.Listing.Keys}") { text, from, to, json, asOf };
        ServerOptions.AddTo(command);
        command.SetAction(parse =>
        {
            var bounded = parse.GetValue(ServerOptions.Server) && parse.GetValue(from) is null;
            var code = OpenSite.ForLines(shell, parse, (shell, desk) => Options.Span(
                shell, parse, desk, (from, DateTimeOffset.MinValue), (to, DateTimeOffset.MaxValue),
                (begin, end) => LogCommand.Listing.Print(
                    shell, parse.GetValue(json), Search.Of(desk, parse.GetValue(text)!, bounded ? Lately(desk, end) : begin, end), "no record holds these words")), asOf);
            if (bounded && code == ExitCode.Done)
            {
                shell.Error.WriteLine($"searched: the last {ServerDays} days{(parse.GetValue(to) is null && parse.GetValue(asOf) is null ? "" : " before the time that is given")}; --from TIME looks further back");
            }

            return code;
        });
        return command;
    }

    private static DateTimeOffset Lately(Desk desk, DateTimeOffset end) => (end < desk.Now ? end : desk.Now).AddDays(-ServerDays);

    public static Command Since(Shell shell)
    {
        var person = new Argument<string>("PERSON") { Description = "A person's code." };
        var (json, asOf) = (Options.Json(), Options.AsOf());
        var command = new Command("since", $"What changed since a person was last here, by equipment. {Changes.Keys}") { person, json, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            var code = parse.GetValue(person)!;
            if (desk.Site.FindPerson(code) is null)
            {
                return shell.Refuse($"'{code}' is not a person of this site", Spelling.Accepted(code, [.. desk.Site.People.Select(p => p.Code)]));
            }

            var since = Handover.Since.Of(desk, code);
            if (!parse.GetValue(json))
            {
                shell.Out.WriteLine(since.LastHere is { } last ? $"since {Say.Day(desk.Site, last)}" : "never here before, as far as the log tells: the last fourteen days");
            }

            return Changes.Print(shell, parse.GetValue(json), since.Changes, "nothing recorded");
        }, asOf));
        return command;
    }
}
