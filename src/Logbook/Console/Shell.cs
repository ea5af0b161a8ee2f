using Logbook.Handover;
using System.Text;
using Logbook.Plant;

namespace Logbook;

/// <summary>What the command line reads from and writes to, and its clock.</summary>
/// <param name="Folder">The folder that relative paths start from.</param>
/// <param name="SiteVariable">What LOGBOOK_SITE says, or null.</param>
internal sealed record Shell(
    TextReader In, TextWriter Out, TextWriter Error, TimeProvider Clock, string Terminal, string Folder, string? SiteVariable)
{
    private const int MostMistakes = 50;
    private const int LongestLine = 600;

    /// <summary>What LOGBOOK_SERVER says: a connection string, never shown; or null.</summary>
    public string? ServerVariable { get; init; }

    /// <summary>What LOGBOOK_SERVER_FILE says, or null.</summary>
    public string? ServerFileVariable { get; init; }

    /// <summary>True when what is said is put together with what other lines say.</summary>
    public bool OneOfMany { get; init; }

    /// <summary>The folder of the person's settings; empty when there is none.</summary>
    public string Settings { get; init; } = "";

    /// <summary>Asks for a PIN without echo; null where there is no terminal.</summary>
    public Func<string, string?>? AskSecret { get; init; }

    /// <summary>What a PIN costs to try; tests make it cheap.</summary>
    public int PinRounds { get; init; } = PinHash.RoundsToday;

    public static Shell OfProcess()
    {
        System.Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        return new(
            System.Console.In, System.Console.IsOutputRedirected ? System.Console.Out : new WrappedOut(System.Console.Out, () => System.Console.WindowWidth), System.Console.Error, TimeProvider.System, TerminalName.OfProcess(),
            Environment.CurrentDirectory, Environment.GetEnvironmentVariable("LOGBOOK_SITE"))
        {
            AskSecret = System.Console.IsInputRedirected ? null : SecretLine.AtTerminal,
            ServerVariable = Environment.GetEnvironmentVariable("LOGBOOK_SERVER"),
            ServerFileVariable = Environment.GetEnvironmentVariable("LOGBOOK_SERVER_FILE"),
            Settings = Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData),
            Watched = !System.Console.IsErrorRedirected,
            Answers = !System.Console.IsInputRedirected && !System.Console.IsOutputRedirected,
        };
    }

    /// <summary>Says each mistake in one line on the error stream.</summary>
    public int Refuse(params IEnumerable<Mistake> mistakes)
    {
        var all = mistakes.ToList();
        foreach (var mistake in all.Take(MostMistakes))
        {
            var line = mistake.ToString();
            Error.WriteLine(line.Length <= LongestLine ? line : line[..LongestLine] + " ...");
        }

        if (all.Count > MostMistakes)
        {
            Error.WriteLine($"and {all.Count - MostMistakes} more mistakes");
        }

        return ExitCode.BadInput;
    }

    public int Refuse(string wrong, string accepted = "") => Refuse(Mistake.Typed(wrong, accepted));

    /// <summary>True when a person sees the error stream: progress is said there.</summary>
    public bool Watched { get; init; }

    /// <summary>True when a person sees what is asked and can answer.</summary>
    public bool Answers { get; init; }

    public string FullPath(string path) => Path.GetFullPath(path, Folder);
}
