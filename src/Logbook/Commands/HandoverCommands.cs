using System.CommandLine;
using System.Text.Json.Nodes;
using Logbook.Handover;
using Logbook.Notes;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>The handover note of a shift.</summary>
internal static class HandoverCommands
{
    public static Command Make(Shell shell) => Steps(shell, new Command("handover", "Who holds the line, and the note that is handed over. It reminds; it does not replace the talk, site procedures, permits or qualified judgement.") { Draft(shell), Show(shell) });

    private static Command Steps(Shell shell, Command handover)
    {
        foreach (var step in GivingCommands.All(shell).Concat(TakingCommands.All(shell)))
        {
            handover.Add(step);
        }

        return handover;
    }

    private static Command Draft(Shell shell)
    {
        var format = Format();
        var output = Out();
        var asOf = Options.AsOf();
        var command = new Command("draft", "The note that is in hand, as it stands.") { format, output, asOf };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
            Write(shell, parse, format, output, HandoverNote.InHand(desk)), asOf));
        return command;
    }

    private static Command Show(Shell shell)
    {
        var shift = new Argument<string?>("SHIFT") { Arity = ArgumentArity.ZeroOrOne, Description = "A shift's id, 2026-11-24-N-C; the last ended one unless said." };
        var format = Format();
        var output = Out();
        var command = new Command("show", "The note of a shift that has ended.") { shift, format, output };
        command.SetAction(parse => OpenSite.ForReading(shell, parse, desk =>
        {
            var running = Calendar.ShiftAt(desk.Site, desk.Now);
            if (parse.GetValue(shift) is not { } id)
            {
                return Write(shell, parse, format, output, HandoverNote.Of(desk, running.Start.AddSeconds(-1)));
            }

            var found = DateOnly.TryParse(id.Length >= 10 ? id[..10] : id, System.Globalization.CultureInfo.InvariantCulture, out var date) && date.Year is > 1900 and < 9999
                ? Calendar.Shifts(desk.Site, Noon(desk.Site, date.AddDays(-1)), Noon(desk.Site, date.AddDays(1))).FirstOrDefault(s => s.Id.StartsWith(id, StringComparison.OrdinalIgnoreCase))
                : null;
            return found is null
                ? shell.Refuse($"there is no shift {id}", $"an id such as {running.Id}: start date, shift, crew")
                : Write(shell, parse, format, output, HandoverNote.Of(desk, found.Start));
        }));
        return command;
    }

    private static int Write(Shell shell, ParseResult parse, Option<string> format, Option<string?> output, HandoverNote note)
    {
        var text = NoteWriter.Write(note, Parse(parse.GetValue(format)!), [Path.Combine(OpenSite.Folder(shell, parse), "notes"), Templates.Notes]);
        if (parse.GetValue(output) is not { } file)
        {
            shell.Out.Write(text);
            return ExitCode.Done;
        }

        return NewFile.Write(shell, file, text);
    }

    private static DateTimeOffset Noon(Site site, DateOnly date)
    {
        var noon = date.ToDateTime(new TimeOnly(12, 0));
        return new DateTimeOffset(noon, site.Zone.GetUtcOffset(noon));
    }

    private static NoteFormat Parse(string word) => word switch { "md" => NoteFormat.Markdown, "html" => NoteFormat.Html, _ => NoteFormat.Text };

    private static Option<string> Format()
    {
        var format = new Option<string>("--format") { Description = "text, md or html.", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "md", "html");
        return format;
    }

    private static Option<string?> Out() => Options.Text("--out", "Write it to a file.", "F");
}
