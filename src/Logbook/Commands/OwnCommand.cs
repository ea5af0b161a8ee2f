using System.CommandLine;
using Logbook.Handover;

namespace Logbook.Commands;

/// <summary>What the audit says of the walks of one person: to that person, and under the site's policy to its readers. Never to a file.</summary>
internal static class OwnCommand
{
    public static Command Make(Shell shell)
    {
        var (of, why) = (Options.Text("--of", "Whose walks; your own unless said. A reader that the policy names sees them once the person has answered.", "CODE"), Options.Text("--why", "Why you look at another's; the person sees it.", "TEXT"));
        var step = new Step(shell, "own", "What the audit says of your own walks of eight weeks, by your PIN, on a terminal alone. Off unless the site cites a [policy].", of, why);
        var signing = SigningOptions.New();
        step.Command.Add(signing.PinFile);
        step.Command.Add(Answer(shell));
        return step.Acts((desk, parse, by) =>
        {
            if (step.Json(parse) || !shell.Answers)
            {
                shell.Error.WriteLine("this is shown on a terminal alone: it goes into no file, no listing and no other program");
                return ExitCode.RefusedByRule;
            }

            var handed = OwnLooks.Look(desk, signing.Of(shell, parse), by, parse.GetValue(of) ?? by, parse.GetValue(why));
            return handed.Own is { } lines ? Print(shell, lines) : WrittenOut.Print(shell, json: false, handed, "shown");
        });
    }

    private static Command Answer(Shell shell)
    {
        var text = new Argument<string>("TEXT") { Description = "Your answer, in your own words; it is a record of the log." };
        var step = new Step(shell, "answer", "Says that you have looked at your own, and what you say to it. Nobody else sees it before that.", text);
        var signing = SigningOptions.New();
        step.Command.Add(signing.PinFile);
        return step.Acts((desk, parse, by) => WrittenOut.Print(shell, step.Json(parse), OwnLooks.Answer(desk, signing.Of(shell, parse), by, parse.GetValue(text)!), "answered"));
    }

    private static int Print(Shell shell, IReadOnlyList<NoteLine> lines)
    {
        foreach (var line in lines)
        {
            shell.Out.WriteLine($" {line.Label,-15} {line.Text}");
        }

        return ExitCode.Done;
    }
}
