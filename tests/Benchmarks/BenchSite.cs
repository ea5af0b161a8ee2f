using System.Diagnostics;
using System.Globalization;
using Logbook;
using Logbook.Checks;
using Logbook.Plant;
using Logbook.PluginHost;

namespace Benchmarks;

/// <summary>A starter site with a journal of a given length, in a folder of its own.</summary>
internal sealed class BenchSite : IDisposable
{
    private static readonly IReadOnlyList<LoadedCalculation> Calculations =
        [.. OpenSite.Plugins(Shell.OfProcess(), site: null).SelectMany(p => p.Calculations.Select(c => new LoadedCalculation(c, p.Name)))];

    private readonly string _folder;
    private readonly bool _kept;
    private readonly SiteFiles _files = SiteReader.Load(Templates.Site).Value!;
    private readonly Clock _clock = new();
    private readonly Random _chance = new(1); // a steady plant, but seldom the same reading twice

    private BenchSite(string? folder)
    {
        _kept = folder is not null;
        _folder = folder is null ? Directory.CreateTempSubdirectory("logbook-bench-").FullName : Directory.CreateDirectory(folder).FullName;
        foreach (var (name, text) in _files.Texts)
        {
            File.WriteAllText(Path.Combine(_folder, name), text);
        }
    }

    /// <summary>A folder that stays: what takes minutes to write is written once. The clock stands at its last record.</summary>
    public static BenchSite In(string folder)
    {
        var site = new BenchSite(folder);
        site.WithDesk(desk => site._clock.Set(desk.State.LastEntered ?? desk.Now));
        return site;
    }

    public static BenchSite With(int readings)
    {
        var site = Empty();
        site.WithDesk(desk =>
        {
            for (var i = 0; i < readings / 40; i++)
            {
                site.Record(desk);
            }
        });
        return site;
    }

    /// <summary>The files alone.</summary>
    public static BenchSite Empty() => new(folder: null);

    public string Folder => _folder;

    public SiteFiles Files => _files;

    /// <summary>Sets its clock.</summary>
    public void SetClock(DateTimeOffset now) => _clock.Set(now);

    /// <summary>Opens the journal anew, as a command does.</summary>
    public void WithDesk(Action<Desk> action)
    {
        var desk = Open(_clock);
        using var store = desk.Store;
        desk.Follow();
        action(desk);
    }

    /// <summary>The journal under a clock of its own. Whoever asks disposes the store.</summary>
    public Desk Open(TimeProvider clock) => OpenSite.Desk(Shell.OfProcess(), _folder, _files, TimeSpan.FromSeconds(5), clock, Calculations);

    /// <summary>One entry of forty readings, an hour after the last.</summary>
    public void Record(Desk desk)
    {
        _clock.Advance(TimeSpan.FromHours(1));
        var points = desk.Site.Points.Where(p => p.Kind == PointKind.Read && p.Choices.Count == 0 && p.Lowest is not null).Take(40);
        var readings = points.Select(p => new TypedReading(p.Tag, Near(p, (2 * _chance.NextDouble()) - 1), Place.Unknown)).ToList();
        if (RecordEntry.Run(desk, new EntryRequest("op1", readings)).Record is null)
        {
            throw new InvalidOperationException("the benchmark's entry was refused");
        }
    }

    /// <summary>The line round, on time, each reading a little off the middle of its limits.</summary>
    public void Round(Desk desk, int hour)
    {
        _clock.Advance(TimeSpan.FromHours(1));
        var round = desk.Site.FindRound("hourly")!;
        var readings = round.Points.Select(tag => desk.Site.FindPoint(tag)!)
            .Select((p, i) => new TypedReading(p.Tag, Near(p, Math.Sin((hour * 0.7) + i) + Math.Sin((hour * 0.013 * (i + 1)) + i)), Place.Unknown)).ToList();
        if (RecordEntry.Run(desk, new EntryRequest("op1", readings) { Round = round.Id }).Record is null)
        {
            throw new InvalidOperationException("the benchmark's round was refused");
        }
    }

    /// <summary>Starts the program as a shell would, and waits for its end.</summary>
    public void Start(string arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", $"{Path.Combine(AppContext.BaseDirectory, "logbook.dll")} {arguments}")
        {
            Environment = { ["LOGBOOK_SITE"] = _folder }, RedirectStandardOutput = true, UseShellExecute = false,
        })!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_kept)
        {
            Directory.Delete(_folder, recursive: true);
        }
    }

    /// <summary>The middle of its limits, off by a share of a fifth of their width.</summary>
    private static string Near(Point point, double share)
    {
        var low = point.Limits.WatchLow ?? point.Lowest!.Value;
        var high = point.Limits.WatchHigh ?? point.Highest!.Value;
        return (((low + high) / 2) + (share * (high - low) / 10)).ToString("F" + point.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private sealed class Clock : TimeProvider
    {
        private DateTimeOffset _now = new(2026, 1, 1, 12, 0, 0, TimeSpan.Zero);

        public void Advance(TimeSpan span) => _now += span;

        public void Set(DateTimeOffset now) => _now = now.ToUniversalTime();

        public override DateTimeOffset GetUtcNow() => _now;
    }
}
