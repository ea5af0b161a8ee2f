using System.CommandLine;
using Logbook.Handover;
using Logbook.Notes;

namespace Logbook.Commands;

/// <summary>Which note, in which format, to where: the options that the commands of notes share.</summary>
internal sealed class NotePrint
{
    private readonly Shell _shell;
    private readonly Option<string> _template;
    private readonly Option<string> _format = new("--format") { Description = "text, md or html.", DefaultValueFactory = _ => "text" };
    private readonly Option<string?> _out = Options.Text("--out", "Write it to a new file.", "F");

    public NotePrint(Shell shell, string help, params string[] templates)
    {
        _shell = shell;
        _template = new Option<string>("--template") { Description = help, DefaultValueFactory = _ => templates[0] };
        _template.AcceptOnlyFromAmong(templates);
        _format.AcceptOnlyFromAmong("text", "md", "html");
    }

    public void AddTo(Command command)
    {
        command.Add(_template);
        command.Add(_format);
        command.Add(_out);
    }

    public NoteKind Kind(ParseResult parse) => parse.GetValue(_template) switch { "long" => NoteKind.Long, "week" => NoteKind.Week, _ => NoteKind.Handover };

    public int Write(Shell shell, ParseResult parse, HandoverNote note) => Print(shell, parse, NoteWriter.Write(note, Kind(parse), Format(parse), Folders(parse)));

    public int Write(Shell shell, ParseResult parse, WeekNote note) => Print(shell, parse, NoteWriter.Write(note, Format(parse), Folders(parse)));

    private NoteFormat Format(ParseResult parse) => parse.GetValue(_format) switch { "md" => NoteFormat.Markdown, "html" => NoteFormat.Html, _ => NoteFormat.Text };

    private IReadOnlyList<string> Folders(ParseResult parse) => [Path.Combine(OpenSite.Folder(_shell, parse), "notes"), Templates.Notes];

    private int Print(Shell shell, ParseResult parse, string text)
    {
        if (parse.GetValue(_out) is { } file)
        {
            return NewFile.Write(shell, file, text);
        }

        shell.Out.Write(text);
        return ExitCode.Done;
    }
}
