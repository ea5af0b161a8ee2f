using System.Text.Json;
using Logbook.Demo;
using Logbook.Plant;
using Microsoft.Extensions.Time.Testing;

namespace Logbook.Tests;

/// <summary>The demo in a folder of its own, made once, with what was planted in it.</summary>
public sealed class DemoLog : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("logbook-demo-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2026, 11, 25, 15, 14, 0, TimeSpan.Zero));
    private readonly Dictionary<string, PlantedEvent> _planted;

    public DemoLog()
    {
        var files = DemoSite.Files(SiteReader.Load(Templates.Site).Value!, 1);
        foreach (var (name, text) in files.Texts)
        {
            File.WriteAllText(Path.Combine(_folder, name), text);
        }

        using var output = new StringWriter();
        var shell = NewShell(output, output);
        IDisposable? store = null;
        var planted = DemoMill.Make(
            clock =>
            {
                var desk = OpenSite.Desk(shell, _folder, files, TimeSpan.FromSeconds(5), clock, OpenSite.Calculations(shell, null));
                store = desk.Store;
                return desk;
            },
            _clock.GetUtcNow(), 14, 1);
        store!.Dispose();
        _planted = planted.ToDictionary(p => p.Name, StringComparer.Ordinal);
        Site = SiteReader.Read(files).Value!;
    }

    public Site Site { get; }

    public DateTimeOffset Now => Calendar.ToSite(Site, _clock.GetUtcNow());

    /// <summary>The panel operator of the running shift.</summary>
    public string OnShift => Crew(Calendar.ShiftAt(Site, Now).Crew);

    public PlantedEvent Planted(string name) => _planted[name];

    public string Crew(string crew) => Site.People.First(p => p.Crew == crew).Code;

    /// <summary>The answer of a command that must succeed.</summary>
    internal Answer Ask(params string[] args)
    {
        var answer = Run(args);
        Assert.True(answer.Code == 0, $"{string.Join(' ', args)}: {answer.Error}");
        return answer;
    }

    /// <summary>The rows of a listing.</summary>
    internal IReadOnlyList<JsonElement> Rows(string name, params string[] args) => [.. Ask([.. args, "--json"]).Json.GetProperty(name).EnumerateArray()];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private Answer Run(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        return new Answer(CommandLine.Run(args, NewShell(output, error)), output.ToString(), error.ToString());
    }

    private Shell NewShell(StringWriter output, StringWriter error) =>
        new(TextReader.Null, output, error, _clock, "test:1", _folder, _folder);
}
