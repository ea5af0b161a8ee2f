using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;

namespace Logbook.Commands;

internal static class RemarkCommand
{
    public static Command Make(Shell shell)
    {
        var text = new Argument<string>("TEXT");
        var on = Options.Text("--on", "The equipment or area that it is about.", "EQUIPMENT");
        var related = new Option<long?>("--related") { Description = "A record that it belongs to.", HelpName = "SEQ" };
        var by = Options.By();
        var json = Options.Json();
        var command = new Command("remark", "Writes words into the log.") { text, on, related, by, json };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var code = WrittenOut.Print(shell, parse.GetValue(json), Writing.Remark(desk, parse.GetValue(text)!, parse.GetValue(on), parse.GetValue(related), parse.GetValue(by) ?? ""), "saved");
            if (code == ExitCode.Done && InjuryWords.Tell(parse.GetValue(text)))
            {
                CautionText.Opened(shell, desk.Site, "carry:injury", parse.GetValue(on) ?? "");
                shell.Error.WriteLine("It stands in the note under what can hurt. To stand in now as well, with where they are: carry add --kind injury --on EQUIPMENT --text WHAT --set who=CODE --set now=WHERE");
            }

            return code;
        }));
        return command;
    }
}
