using System.CommandLine;
using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Commands;

internal static class StateCommand
{
    public static Command Make(Shell shell)
    {
        var equipment = new Argument<string>("EQUIPMENT") { Description = "Its code, as in the site file." };
        var state = new Argument<string>("STATE") { Description = "running, starting, stopped, standby, washing, acid, draining or out." };
        var since = Options.Text("--since", "Since when; now unless said.", "TIME");
        var why = Options.Text("--why", "Why.", "TEXT");
        var by = Options.By();
        var json = Options.Json();
        var command = new Command("state", "Says what a piece of equipment does. Opening an acid wash prints its caution.") { equipment, state, since, why, by, json };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var from = Options.Time(parse, since, desk.Site, desk.Now, mistakes);
            if (mistakes.Count > 0)
            {
                return shell.Refuse(mistakes);
            }

            var written = Writing.ChangeState(desk, parse.GetValue(equipment)!, parse.GetValue(state)!, from, parse.GetValue(why), parse.GetValue(by) ?? "");
            var code = WrittenOut.Print(shell, parse.GetValue(json), written, "saved");
            if (code == ExitCode.Done)
            {
                CautionText.Opened(shell, desk.Site, "state:" + parse.GetValue(state), parse.GetValue(equipment)!);
                CautionText.YetRecorded(shell, desk, parse.GetValue(equipment)!);
            }

            return code;
        }));
        return command;
    }
}
