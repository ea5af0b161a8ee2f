using System.Text;
using Logbook.Handover;
using Logbook.Plant;

namespace Logbook;

/// <summary>Where a PIN comes from: a terminal without echo, a file, or standard input.</summary>
internal sealed class SecretLine(Shell shell, string? file)
{
    /// <summary>True when a person at a terminal is asked.</summary>
    public bool Asks => file is null && shell.AskSecret is not null;

    /// <summary>The PIN; null when there is none to be had. Several may stand in one file or stream, one a line.</summary>
    public string? Ask(string question)
    {
        if (file is null)
        {
            return shell.AskSecret?.Invoke(question);
        }

        if (file == "-")
        {
            return shell.In.ReadLine();
        }

        _lines ??= new Queue<string>(TextFile.Read(shell.FullPath(file)).ReplaceLineEndings("\n").Split('\n'));
        return _lines.TryDequeue(out var line) ? line : null;
    }

    private Queue<string>? _lines;

    /// <summary>Asks at the real terminal, without echo.</summary>
    public static string AtTerminal(string question)
    {
        System.Console.Error.Write(Say.Visible(question) + ": ");
        var typed = new StringBuilder();
        for (var key = System.Console.ReadKey(intercept: true); key.Key != ConsoleKey.Enter; key = System.Console.ReadKey(intercept: true))
        {
            if (key.Key == ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        System.Console.Error.WriteLine();
        return typed.ToString();
    }
}
