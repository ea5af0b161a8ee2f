using System.CommandLine;
using Logbook.Checks;
using Logbook.Plant;

namespace Logbook;

/// <summary>A command that writes one record: it has --by and --json, and refuses every option that cannot be read at once.</summary>
internal static class WriteCommand
{
    /// <param name="done">What it answers when the record is on the disk: <c>open</c>.</param>
    /// <param name="write">Gets the parsed line, the desk, whose code was given, and where mistakes go; writes nothing when there are any.</param>
    public static Command Make(
        Shell shell, string name, string help, string done, IEnumerable<Symbol> parts, Func<ParseResult, Desk, string, List<Mistake>, Func<Written>> write)
    {
        var by = Options.By();
        var json = Options.Json();
        var command = new Command(name, help);
        foreach (var part in parts)
        {
            command.Add(part);
        }

        command.Add(by);
        command.Add(json);
        command.SetAction(parse => OpenSite.ForWriting(shell, parse, desk =>
        {
            var mistakes = new List<Mistake>();
            var save = write(parse, desk, parse.GetValue(by) ?? "", mistakes);
            return mistakes.Count > 0 ? shell.Refuse(mistakes) : WrittenOut.Print(shell, parse.GetValue(json), save(), done);
        }));
        return command;
    }

    private static void Add(this Command command, Symbol part)
    {
        if (part is Option option)
        {
            command.Options.Add(option);
        }
        else
        {
            command.Arguments.Add((Argument)part);
        }
    }
}
