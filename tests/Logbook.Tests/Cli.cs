using System.Text.Json;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Tests;

/// <summary>The command line on a fresh starter site in a folder of its own, with a clock that tests hold.</summary>
internal sealed class Cli : IDisposable
{
    public Cli()
    {
        Folder = Directory.CreateTempSubdirectory("logbook-cli-").FullName;
        Run("init", Folder);
    }

    public string Folder { get; }

    /// <summary>Wednesday 25 November 2026, 10:00 at the site: two hours into a day shift.</summary>
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 11, 25, 15, 0, 0, TimeSpan.Zero));

    /// <summary>What LOGBOOK_SERVER says.</summary>
    public string? Server { get; set; }

    /// <summary>A person sees what is asked and can answer.</summary>
    public bool Answers { get; init; }

    public Answer Run(params string[] args) => RunWith("", args);

    public Answer RunWith(string input, params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var shell = new Shell(new StringReader(input), output, error, Clock, "test:1", Folder, Folder) { PinRounds = 1, ServerVariable = Server, Answers = Answers };
        var code = CommandLine.Run(args, shell);
        return new Answer(code, output.ToString(), error.ToString());
    }

    public string Write(string name, string text)
    {
        File.WriteAllText(Path.Combine(Folder, name), text);
        return name;
    }

    public int Records => Run("verify", "--json").Json.GetProperty("records").GetInt32();

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}

internal sealed record Answer(int Code, string Out, string Error)
{
    public JsonElement Json => JsonDocument.Parse(Out).RootElement;

    /// <summary>The lines on the error stream.</summary>
    public string[] Lines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
