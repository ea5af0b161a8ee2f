using System.CommandLine;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>A round on paper.</summary>
internal static class RoundCommand
{
    public static Command Make(Shell shell) => new("round", "Rounds on paper.") { Print(shell) };

    private static Command Print(Shell shell)
    {
        var id = new Argument<string>("ID") { Description = "The round's id in site.toml." };
        var output = Options.Text("--out", "Write it to a new file.", "F");
        var command = new Command("print", "A sheet in walking order, without old values: to be filled in on the walk and typed afterwards.") { id, output };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            if (desk.Site.FindRound(parse.GetValue(id)!) is not { } round)
            {
                return shell.Refuse($"there is no round {parse.GetValue(id)}", Spelling.Accepted(parse.GetValue(id)!, [.. desk.Site.Rounds.Select(r => r.Id)]));
            }

            var text = PaperSheet.Of(desk.Site, round, desk.Now);
            if (parse.GetValue(output) is { } file)
            {
                return NewFile.Write(shell, file, text);
            }

            shell.Out.Write(text);
            return ExitCode.Done;
        }));
        return command;
    }
}
