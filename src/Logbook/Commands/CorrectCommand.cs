using System.CommandLine;
using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Readings put right, or taken back, by a new record; both stay.</summary>
internal static class CorrectCommand
{
    public static Command Make(Shell shell)
    {
        var seq = new Argument<long>("SEQ") { Description = "The entry's record number, as 'log' shows it." };
        var readings = new Argument<string[]>("POINT=VALUE") { Arity = ArgumentArity.OneOrMore, Description = "Each reading as it should have been, all in one record: what was swapped is put right at once. POINT=- takes a value back that belongs elsewhere: it counts nowhere any more." };
        var why = Options.Text("--why", "Why it is corrected.", "TEXT");
        var by = Options.By();
        var json = Options.Json();
        var results = Options.Results();
        var command = new Command("correct", "Corrects readings of an entry by a new record, or takes them back; what was typed first stays in the log. With --json: seq, head, results, findings.") { seq, readings, why, by, json, results };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var typed = TypedReadings.Of(parse.GetValue(readings)!, mistakes);
            return mistakes.Count > 0
                ? shell.Refuse(mistakes)
                : WrittenOut.Print(shell, parse.GetValue(json), Writing.Correct(desk, parse.GetValue(seq), typed, parse.GetValue(why) ?? "", parse.GetValue(by) ?? ""), "corrected", desk.Site, parse.GetValue(results));
        }));
        return command;
    }
}
