using System.CommandLine;
using System.Globalization;
using System.Text;
using Logbook.Handover;
using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Logbook.Commands;

/// <summary>The journal out of the program: the records' exact bytes, or readings for a spreadsheet.</summary>
internal static class ExportCommand
{
    private const string Header = "point,value,unit,at,why,seq,round,by,status";

    public static Command Make(Shell shell)
    {
        var format = new Option<string>("--format") { Description = "jsonl: every record's exact bytes, one a line, for verification and restore. csv: the readings as they stand, for spreadsheets and import.", Required = true };
        format.AcceptOnlyFromAmong("jsonl", "csv");
        var output = Options.Text("--out", "The file to write; else it goes to standard output.", "F");
        var command = new Command("export", $"The whole journal, as far as it is sound. The columns of csv: {Header}; a text that a spreadsheet could take for a formula begins with an apostrophe.") { format, output };
        command.SetAction(parse => OpenSite.Journal(shell, parse, store => Write(shell, store, parse.GetValue(format)!, parse.GetValue(output)), whenDamaged: ExitCode.Store));
        return command;
    }

    private static int Write(Shell shell, LiteDbJournal store, string format, string? path)
    {
        if (path is null)
        {
            return Lines(shell, store, format, shell.Out);
        }

        using var file = new WholeFile(shell.FullPath(path));
        var code = Lines(shell, store, format, file.Text);
        file.Keep();
        return code;
    }

    private static int Lines(Shell shell, LiteDbJournal store, string format, TextWriter output)
    {
        var lines = format == "csv" ? Csv(store, output) : record => [Encoding.UTF8.GetString(record.Bytes.Span)];
        using var progress = Progress.Of(shell, "exporting", store.Anchor()?.Seq ?? 0);
        var check = store.Verify(progress.Work, record =>
        {
            foreach (var line in lines(record))
            {
                output.Write(line + '\n');
            }
        });
        if (check.Ok)
        {
            return ExitCode.Done;
        }

        shell.Error.WriteLine(Say.Visible(string.Create(CultureInfo.InvariantCulture, $"exported what is sound, up to record {check.Records}; record {check.FirstBad}: {check.Why}")));
        return ExitCode.Store;
    }

    private static Func<JournalRecord, IEnumerable<string>> Csv(LiteDbJournal store, TextWriter output)
    {
        output.Write(Header + '\n');
        var rows = ReadingRow.In(store);
        return record => rows(record).Select(Cells);
    }

    private static string Cells(ReadingRow row)
    {
        var (reading, value) = (row.Reading, row.Reading.Value);
        return string.Join(',',
            CsvCell.Of(reading.Point), value?.ToString("R", CultureInfo.InvariantCulture) ?? "-", CsvCell.Of(reading.Unit), Json.Time(reading.At),
            CsvCell.Of(reading.Why), row.Seq.ToString(CultureInfo.InvariantCulture), CsvCell.Of(row.Round), CsvCell.Of(row.By), row.Status);
    }
}
