using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Logbook.Checks;
using Logbook.Journal;
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
            var judged = Judge(shell, desk, requests);
            mistakes.AddRange(judged.SelectMany(j => j.Mistakes).Distinct());
            return mistakes.Count > 0 ? shell.Refuse(mistakes) : Save(shell, desk, [.. requests.Zip(judged, (r, j) => (r, j.Value!))], parse.GetValue(json));
        }));
        return command;
    }

    private static List<Parsed<Entry>> Judge(Shell shell, Desk desk, List<EntryRequest> requests)
    {
        using var progress = Progress.Of(shell, "judging, entries", requests.Count);
        return requests.Select((request, index) =>
        {
            progress.Work.Reached(index);
            return RecordEntry.Judge(desk, request);
        }).ToList();
    }

    private static int Save(Shell shell, Desk desk, List<(EntryRequest Request, Entry Judged)> requests, bool json)
    {
        var (entries, readings) = (0, 0);
        try
        {
            using var progress = Progress.Of(shell, "importing, entries", requests.Count);
            foreach (var (index, (request, judged)) in requests.Index())
            {
                progress.Work.Reached(index);
                if (IsThere(desk, request.At!.Value, judged))
                {
                    continue;
                }

                var written = RecordEntry.Run(desk, request);
                if (written.Record is null)
                {
                    return shell.Refuse(written.Mistakes);
                }

                (entries, readings) = (entries + 1, readings + request.Readings.Count);
            }
        }
        catch (OperationCanceledException)
        {
            shell.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"stopped: {entries} of {requests.Count} entries were imported, each as a whole; the same command again imports the rest"));
            return ExitCode.Stopped;
        }

        return Print(shell, desk.State.Head, entries, readings, requests.Count - entries, json);
    }

    private static int Print(Shell shell, Head head, int entries, int readings, int there, bool json)
    {
        var before = there > 0 ? string.Create(CultureInfo.InvariantCulture, $"; {there} entries were there already") : "";
        shell.Out.WriteLine(json
            ? Json.Text(new JsonObject { ["entries"] = entries, ["readings"] = readings, ["seq"] = head.Seq, ["head"] = head.Hash, ["there_already"] = there })
            : string.Create(CultureInfo.InvariantCulture, $"imported: {readings} readings in {entries} entries{before}, up to record {head.Seq}, head {head.Hash[..12]}"));
        return ExitCode.Done;
    }

    /// <summary>True when this entry of this file is in the journal: an import that was stopped or killed may be run again.</summary>
    private static bool IsThere(Desk desk, DateTimeOffset at, Entry judged) =>
        desk.Store.Between(at, at.AddMilliseconds(1)).Any(r =>
            r.Body is Entry entry && entry.Imported == judged.Imported && entry.Readings.SequenceEqual(judged.Readings));
}
