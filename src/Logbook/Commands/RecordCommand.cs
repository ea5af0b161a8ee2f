using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>An entry from the command line, a CSV file or standard input.</summary>
internal static class RecordCommand
{
    public static Command Make(Shell shell)
    {
        var readings = new Argument<string[]>("POINT=VALUE") { Description = "A reading, with its unit if it is not the point's: SL-T1=101.2, \"GL-D1=70.6 lb/ft3\"; POINT=- is not taken.", Arity = ArgumentArity.ZeroOrMore };
        var file = Options.Text("--file", "CSV with the columns point,value,unit,at,why ('-': standard input).", "F");
        var round = Options.Text("--round", "The round that these readings belong to.", "ID");
        var at = Options.Text("--at", "When it was read; now unless said.", "TIME");
        var remark = Options.Text("--remark", "Words to the entry.", "TEXT");
        var why = Options.Many("--why", "Why a reading was not taken, or stands outside the possible range; may be repeated.", "POINT=REASON");
        var walkFrom = Options.Text("--walk-from", "Start of a field walk that is typed now.", "TIME");
        var walkTo = Options.Text("--walk-to", "End of that walk.", "TIME");
        var second = new Option<long?>("--second-of") { Description = "The record whose readings are taken a second time here.", HelpName = "SEQ" };
        var by = Options.By();
        var json = Options.Json();
        var results = Options.Results();
        var command = new Command("record", "Saves one entry: readings are judged, computed from, and on the disk when it answers. With --json: seq, head, results, findings.")
        {
            readings, file, round, at, remark, why, walkFrom, walkTo, second, by, json, results,
        };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var typed = TypedReadings.Of(parse.GetValue(readings) ?? [], mistakes);
            if (parse.GetValue(file) is { } path)
            {
                typed.AddRange(TypedReadings.FromFile(shell, path, desk.Site, desk.Now, mistakes));
            }

            TypedReadings.GiveReasons(typed, parse.GetValue(why) ?? [], mistakes);
            DateTimeOffset? Time(Option<string?> option) => Options.Time(parse, option, desk.Site, desk.Now, mistakes);
            var request = new EntryRequest(parse.GetValue(by) ?? "", typed)
            {
                Round = parse.GetValue(round), At = Time(at), WalkStart = Time(walkFrom), WalkEnd = Time(walkTo), Remark = parse.GetValue(remark), SecondOf = parse.GetValue(second),
            };
            if (typed.Count == 0 && mistakes.Count == 0)
            {
                mistakes.Add(Mistake.Typed("no reading was given", "POINT=VALUE, or --file F with the columns point,value,unit,at,why"));
            }

            return mistakes.Count > 0 ? shell.Refuse(mistakes) : Save(shell, parse.GetValue(json), parse.GetValue(results), desk, request);
        }));
        return command;
    }

    private static int Save(Shell shell, bool json, bool whole, Desk desk, EntryRequest request)
    {
        var written = RecordEntry.Run(desk, request);
        var code = WrittenOut.Print(shell, json, written, "saved", desk.Site, whole);
        if (written.Record?.Body is Entry entry)
        {
            if (!json && CountsFor.Words(desk, written.Record) is { } counts)
            {
                shell.Out.WriteLine($"  {counts}");
            }

            CautionText.WorkedOn(shell, desk.Site, entry);
            SayOpened(shell, json, desk, written.Record.Seq);
        }

        return code;
    }

    /// <summary>What it leaves open by itself, so that whoever typed it knows that it is on its way.</summary>
    private static void SayOpened(Shell shell, bool json, Desk desk, long seq)
    {
        if (!json && desk.State.Carried.Find(c => c.Id == seq) is { } item)
        {
            shell.Out.WriteLine(Say.Visible($"open {item.Id}: {item.ItemKind}, {Say.Equipment(desk.Site, item.On)}: {item.Text}; it stands in the note until it is closed"));
        }
    }
}
