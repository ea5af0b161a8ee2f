using System.CommandLine;
using System.Globalization;
using System.Text;
using Logbook.Handover;
using Logbook.Journal;

namespace Logbook.Commands;

/// <summary>The journal out of the program: the records' exact bytes, or readings for a spreadsheet.</summary>
internal static class ExportCommand
{
    private const string Header = "point,value,unit,at,why,seq,round,by,status,doubts";

    public static Command Make(Shell shell)
    {
        var format = new Option<string>("--format") { Description = "jsonl: every record's exact bytes, one a line, for verification and restore. csv: the readings as they stand, for spreadsheets and import.", Required = true };
        format.AcceptOnlyFromAmong("jsonl", "csv");
        var output = Options.Text("--out", "Write it to a new file; else it goes to standard output.", "F");
        var points = Options.Many("--point", "Of csv, only this point, read or computed; may be repeated.", "TAG");
        var (from, to) = (Options.From(), Options.To());
        var command = new Command("export", $"The whole journal, as far as it is sound; of csv also single points and a span. The columns of csv: {Header}; doubts keep apart what was typed later, imported, stuck, beyond its step or range, or contradicted. A text that a spreadsheet could take for a formula begins with an apostrophe.") { format, output, points, from, to };
        ServerOptions.AddTo(command);
        command.SetAction(parse =>
        {
            if (ExportChoice.Of(shell, parse, points, (from, to), parse.GetValue(format)!, out var mistakes) is not { } choice)
            {
                return shell.Refuse(mistakes);
            }

            return parse.GetValue(ServerOptions.Server)
                ? parse.GetValue(ServerOptions.Line) is { Length: 1 }
                    ? ServerReading.Lines(shell, parse, line => Write(shell, new(line, line.Line.Head.Seq, line.Verify), choice, parse.GetValue(output)))
                    : shell.Refuse("one journal comes out at a time", "--server --line ID")
                : OpenSite.Journal(shell, parse, store => Write(shell, new(store, store.Anchor()?.Seq ?? 0, store.Verify), choice, parse.GetValue(output)), whenDamaged: ExitCode.Store);
        });
        return command;
    }

    private static int Write(Shell shell, Whole whole, ExportChoice choice, string? path) => path is null
        ? Lines(shell, whole, choice, shell.Out)
        : NewFile.Write(shell, path, file => Lines(shell, whole, choice, file));

    private static int Lines(Shell shell, Whole whole, ExportChoice choice, TextWriter output)
    {
        var lines = choice.Csv ? Csv(whole.Store, choice, output) : record => [Encoding.UTF8.GetString(record.Bytes.Span)];
        using var progress = Progress.Of(shell, "exporting", whole.Records);
        var check = whole.Verify(progress.Work, record =>
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

    private static Func<JournalRecord, IEnumerable<string>> Csv(IJournalStore store, ExportChoice choice, TextWriter output)
    {
        output.Write(Header + '\n');
        var (read, computed) = (ReadingRow.In(store), choice.Points.Count == 0 ? _ => [] : ReadingRow.Computed(store));
        return record => read(record).Concat(computed(record)).Where(choice.Wants).Select(Cells);
    }

    private static string Cells(ReadingRow row)
    {
        var (reading, value) = (row.Reading, row.Reading.Value);
        return string.Join(',',
            CsvCell.Of(reading.Point), value?.ToString("R", CultureInfo.InvariantCulture) ?? "-", CsvCell.Of(reading.Unit), Json.Time(reading.At),
            CsvCell.Of(reading.Why), row.Seq.ToString(CultureInfo.InvariantCulture), CsvCell.Of(row.Round), CsvCell.Of(row.By), row.Status, string.Join(' ', row.Doubts.Select(d => d.Replace(' ', '-'))));
    }

    /// <summary>A journal that hands over its records while it is verified.</summary>
    /// <param name="Records">How many there are, as far as is known.</param>
    private sealed record Whole(IJournalStore Store, long Records, Func<LongWork, Action<JournalRecord>, ChainCheck> Verify);
}
