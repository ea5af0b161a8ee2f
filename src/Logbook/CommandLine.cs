using Logbook.Handover;
using System.CommandLine;
using System.Text.RegularExpressions;
using Logbook.Commands;

namespace Logbook;

/// <summary>Every command of the program. Errors go to the error stream, one line each; see <see cref="ExitCode"/>.</summary>
internal static class CommandLine
{
    private const string About =
        """
        Shift logbook of a recausticizing line: rounds, readings and their arithmetic, handover notes, audit of missed checks.
        Without a command it opens the screen. What it computes advises; it never commands: site procedures, local codes and
        licensed practice rule.
        """;

    public static int Run(IReadOnlyList<string> args, Shell process)
    {
        var shell = process with { Out = new VisibleWriter(process.Out), Error = new VisibleWriter(process.Error) };
        var root = Root(shell);
        var parse = root.Parse(args);
        if (parse.Errors.Count > 0)
        {
            shell.Error.WriteLine(Say.Visible($"{InPlainWords(string.Join(' ', parse.Errors[0].Message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))} See: {Path(parse.CommandResult)} --help"));
            return ExitCode.BadInput;
        }

        try
        {
            return parse.Invoke(new InvocationConfiguration { Output = shell.Out, Error = shell.Error, EnableDefaultExceptionHandler = false });
        }
        catch (IOException trouble)
        {
            shell.Error.WriteLine(Say.Visible(trouble.Message));
            return ExitCode.Store;
        }
        catch (UnauthorizedAccessException trouble)
        {
            shell.Error.WriteLine(Say.Visible(trouble.Message));
            return ExitCode.Store;
        }
    }

    /// <summary>The library names the types of the language where a number is meant.</summary>
    private static string InPlainWords(string message) => Regex.Replace(message, "as expected type '[^']*Int[0-9]+[^']*'", "as a whole number", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

    private static string Path(System.CommandLine.Parsing.CommandResult result) =>
        result.Parent is System.CommandLine.Parsing.CommandResult parent ? $"{Path(parent)} {result.Command.Name}" : "logbook";

    private static RootCommand Root(Shell shell)
    {
        var root = new RootCommand(About) { Options.Site, Options.Wait };
        var by = Options.By();
        root.Add(by);
        root.SetAction(parse => ScreenCommand.Open(shell, parse, parse.GetValue(by)));
        Command[] commands =
        [
            DemoCommand.Make(shell), SiteCommands.Init(shell), SiteCommands.Check(shell), SiteCommands.Adopt(shell),
            RecordCommand.Make(shell), RoundCommand.Make(shell), ImportCommand.Make(shell), CorrectCommand.Make(shell), RemarkCommand.Make(shell),
            StateCommand.Make(shell), CarryCommands.Make(shell), LineCommands.Answer(shell), LineCommands.Upset(shell), LineCommands.Clock(shell),
            OrderCommands.Make(shell), DepartmentCommands.Make(shell), RosterCommands.Make(shell),
            NowCommand.Make(shell), DueCommand.Make(shell), ListCommand.Make(shell), TrendCommand.Make(shell), ExamineCommand.Make(shell), LogCommand.Make(shell), FindCommands.Find(shell), FindCommands.Since(shell),
            HandoverCommands.Make(shell), TemplateCommands.Make(shell), AuditCommand.Make(shell), AuditCommand.LimitUse(shell), OwnCommand.Make(shell),
            CalcCommands.Make(shell), PluginsCommand.Make(shell), PeopleCommand.Make(shell),
            VerifyCommand.Make(shell), ExportCommand.Make(shell), BackupCommands.Backup(shell), BackupCommands.Restore(shell),
            ForwardCommand.Make(shell), ServerCommands.Make(shell),
        ];
        foreach (var command in commands)
        {
            root.Add(command);
        }

        return root;
    }
}
