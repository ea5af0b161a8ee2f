using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>Readings of the past from a file: rows with one time become one entry, marked as imported.</summary>
internal static class ImportCommand
{
    public static Command Make(Shell shell)
    {
        var file = new Argument<string>("F.csv") { Description = "CSV with the columns point,value,unit,at,why; 'at' is needed." };
        var by = Options.By();
        var json = Options.Json();
        var command = new Command("import", "Takes readings from a CSV file; rows with one time become one entry. Nothing is saved when a row is wrong. With --json: entries, readings, head.") { file, by, json };
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var path = parse.GetValue(file)!;
            var rows = TypedReadings.FromFile(shell, path, desk.Site, desk.Now, mistakes);
            mistakes.AddRange(rows.Where(r => r.At is null && mistakes.Count == 0).Select(r => new Mistake(r.Place, "no time of reading", "a time in the column 'at'")));
            if (mistakes.Count > 0)
            {
                return shell.Refuse(mistakes);
            }

            List<EntryRequest> requests = [.. rows.GroupBy(r => r.At!.Value).OrderBy(g => g.Key)
                .Select(g => new EntryRequest(parse.GetValue(by) ?? "", [.. g]) { At = g.Key, Imported = Path.GetFileName(path) })];
            mistakes.AddRange(requests.SelectMany(r => RecordEntry.Judge(desk, r).Mistakes));
            return mistakes.Count > 0 ? shell.Refuse(mistakes) : Save(shell, desk, requests, parse.GetValue(json));
        }));
        return command;
    }

    private static int Save(Shell shell, Desk desk, List<EntryRequest> requests, bool json)
    {
        foreach (var request in requests)
        {
            var written = RecordEntry.Run(desk, request);
            if (written.Record is null)
            {
                return shell.Refuse(written.Mistakes);
            }
        }

        var readings = requests.Sum(r => r.Readings.Count);
        var head = desk.State.Head;
        shell.Out.WriteLine(json
            ? Json.Text(new JsonObject { ["entries"] = requests.Count, ["readings"] = readings, ["seq"] = head.Seq, ["head"] = head.Hash })
            : string.Create(CultureInfo.InvariantCulture, $"imported: {readings} readings in {requests.Count} entries, up to record {head.Seq}, head {head.Hash[..12]}"));
        return ExitCode.Done;
    }
}
