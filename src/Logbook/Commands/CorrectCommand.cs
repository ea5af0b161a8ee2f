using System.CommandLine;
using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>A reading put right by a new record; both stay.</summary>
internal static class CorrectCommand
{
    public static Command Make(Shell shell)
    {
        var seq = new Argument<long>("SEQ") { Description = "The entry's record number, as 'log' shows it." };
        var reading = new Argument<string>("POINT=VALUE") { Description = "The reading as it should have been." };
        var why = Options.Text("--why", "Why it is corrected.", "TEXT");
        var by = Options.By();
        var json = Options.Json();
        var command = new Command("correct", "Corrects one reading of an entry by a new record. With --json: seq, head, results, findings.") { seq, reading, why, by, json };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var typed = TypedReadings.Of([parse.GetValue(reading)!], mistakes);
            return mistakes.Count > 0
                ? shell.Refuse(mistakes)
                : WrittenOut.Print(shell, parse.GetValue(json), Writing.Correct(desk, parse.GetValue(seq), typed[0], parse.GetValue(why) ?? "", parse.GetValue(by) ?? ""), "corrected", desk.Site);
        }));
        return command;
    }
}
