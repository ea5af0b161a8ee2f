using System.CommandLine;
using Logbook.Checks;
using Logbook.Handover;

namespace Logbook.Commands;

/// <summary>A step of the handover as a command: who, how signed, and what it answers.</summary>
internal sealed class Step
{
    private readonly Option<string?> _by = Options.By();
    private readonly Option<bool> _json = Options.Json();
    private readonly Shell _shell;

    /// <param name="words">The options and arguments of this step alone.</param>
    public Step(Shell shell, string name, string help, params Symbol[] words)
    {
        _shell = shell;
        Command = new Command(name, help);
        foreach (var word in words)
        {
            if (word is Argument argument)
            {
                Command.Add(argument);
            }
            else
            {
                Command.Add((Option)word);
            }
        }

        Command.Add(_by);
        Command.Add(_json);
    }

    public Command Command { get; }

    /// <summary>A step without a PIN.</summary>
    public Command Does(string done, Func<Desk, ParseResult, string, Handed> take) =>
        Acts((desk, parse, by) => Print(parse, take(desk, parse, by), done));

    /// <summary>A step that is signed by PIN.</summary>
    /// <param name="under">What is said under the answer once it is done.</param>
    public Command Signs(string done, Func<Desk, ParseResult, SignWith, string, Handed> take, Action<Desk, Handed>? under = null)
    {
        var signing = SigningOptions.New();
        signing.AddTo(Command);
        return Acts((desk, parse, by) =>
        {
            var handed = take(desk, parse, signing.Of(_shell, parse), by);
            var code = Print(parse, handed, done);
            if (handed.Record is not null)
            {
                under?.Invoke(desk, handed);
            }

            return code;
        });
    }

    public Command Acts(Func<Desk, ParseResult, string, int> action)
    {
        Command.SetAction(parse => OpenSite.ForWriting(_shell, parse, desk => action(desk, parse, parse.GetValue(_by) ?? "")));
        return Command;
    }

    public bool Json(ParseResult parse) => parse.GetValue(_json);

    private int Print(ParseResult parse, Handed handed, string done)
    {
        if (handed.Reopened is { } page)
        {
            PageOut.Print(_shell.Error, page);
        }

        return WrittenOut.Print(_shell, Json(parse), handed, done);
    }
}
