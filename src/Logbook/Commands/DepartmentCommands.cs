using System.CommandLine;
using Logbook.Checks;
using Logbook.Journal;

namespace Logbook.Commands;

/// <summary>Notes to other departments, acknowledged by name.</summary>
internal static class DepartmentCommands
{
    private static readonly Rows<OpenDepartmentNote> Listing = new("department",
        new("id", n => n.Id), new("to", n => n.To), new("at", n => n.At), new("by", n => n.By), new("text", n => n.Text));

    public static Command Make(Shell shell) => new("department", "Notes to other departments: told, acknowledged by name, listed.") { Add(shell), Ack(shell), List(shell) };

    private static Command Add(Shell shell)
    {
        var to = new Argument<string>("DEPARTMENT");
        var text = new Argument<string>("TEXT");
        return WriteCommand.Make(shell, "add", "Tells another department something; it stays open until a named person there acknowledges it.", "told", [to, text],
            (parse, desk, by, _) => () => Writing.TellDepartment(desk, parse.GetValue(to)!, parse.GetValue(text)!, by));
    }

    private static Command Ack(Shell shell)
    {
        var id = new Argument<long>("ID");
        var name = Options.Text("--name", "Who acknowledged it, by name.", "NAME");
        var answer = Options.Text("--answer", "What they said.", "TEXT");
        return WriteCommand.Make(shell, "ack", "Says who in the department acknowledged the note.", "acknowledged", [id, name, answer],
            (parse, desk, by, _) => () => Writing.Acknowledge(desk, parse.GetValue(id), parse.GetValue(name) ?? "", parse.GetValue(answer) ?? "", by));
    }

    private static Command List(Shell shell)
    {
        var json = Options.Json();
        var asOf = Options.AsOf();
        var command = new Command("list", $"Notes that nobody has acknowledged. {Listing.Keys}") { json, asOf };
        command.SetAction(parse => OpenSite.ForReading(
            shell, parse, desk => Listing.Print(shell, parse.GetValue(json), desk.State.Departments, "no note waits for an acknowledgement"), asOf));
        return command;
    }
}
