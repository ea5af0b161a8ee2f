using System.CommandLine;
using Logbook.Notes;
using Logbook.Plant;

namespace Logbook.Commands;

/// <summary>A site's own templates: whether one is sound and leaves nothing out that must stand, and how it looks.</summary>
internal static class TemplateCommands
{
    public static Command Make(Shell shell) => new("template", "A site's own templates of notes. They lie in the site's notes/ folder, named like the shipped ones.") { Check(shell), Preview(shell) };

    private static Command Check(Shell shell)
    {
        var file = File();
        var command = new Command("check", "Renders an example that holds something of everything, and says what is wrong with the template or what it leaves out.") { file };
        command.SetAction(parse => Render(shell, parse.GetValue(file)!, trial =>
        {
            if (trial.LeftOut.Count == 0)
            {
                shell.Out.WriteLine($"{parse.GetValue(file)}: sound, and leaves out nothing that must stand");
                return ExitCode.Done;
            }

            return shell.Refuse(trial.LeftOut.Select(text => Mistake.Typed($"{parse.GetValue(file)}: leaves out: {text}", "it would be printed above the note, marked")));
        }));
        return command;
    }

    private static Command Preview(Shell shell)
    {
        var file = File();
        var output = Options.Text("--out", "Write it to a new file.", "F");
        var command = new Command("preview", "Shows the example as the template draws it; with what it leaves out above it, as it would print.") { file, output };
        command.SetAction(parse => Render(shell, parse.GetValue(file)!, trial =>
        {
            if (parse.GetValue(output) is { } path)
            {
                return NewFile.Write(shell, path, trial.Text!);
            }

            shell.Out.Write(trial.Text!);
            return ExitCode.Done;
        }));
        return command;
    }

    private static Argument<string> File() => new("FILE") { Description = "The template: " + TemplateName.Accepted + "." };

    private static int Render(Shell shell, string file, Func<TemplateTrial, int> show)
    {
        var path = shell.FullPath(file);
        if (TemplateName.Of(path) is not { } name)
        {
            return shell.Refuse($"{file}: its name does not say which note it draws", TemplateName.Accepted);
        }

        var trial = System.IO.File.Exists(path) ? TemplateTrial.Of(path, name) : new TemplateTrial(null, $"{file}: there is no such file", []);
        return trial.Fault is { } fault ? shell.Refuse(fault) : show(trial);
    }
}
