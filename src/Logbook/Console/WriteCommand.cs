using System.CommandLine;
using Logbook.Checks;
using Logbook.Commands;
using Logbook.Plant;

namespace Logbook;

/// <summary>A command that writes one record and refuses every option that cannot be read at once.</summary>
internal static class WriteCommand
{
    /// <param name="done">What it answers when the record is on the disk: <c>open</c>.</param>
    /// <param name="write">Gets the parsed line, the desk, whose code was given, and where mistakes go; what it returns is called when there are none.</param>
    public static Command Make(
        Shell shell, string name, string help, string done, Symbol[] parts, Func<ParseResult, Desk, string, List<Mistake>, Func<Written>> write)
    {
        var step = new Step(shell, name, help, parts);
        return step.Acts((desk, parse, by) =>
        {
            var mistakes = new List<Mistake>();
            var save = write(parse, desk, by, mistakes);
            return mistakes.Count > 0 ? shell.Refuse(mistakes) : WrittenOut.Print(shell, step.Json(parse), save(), done);
        });
    }
}
