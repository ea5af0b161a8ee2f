using Microsoft.Extensions.Time.Testing;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>A site folder of its own for one test, gone afterwards.</summary>
public sealed class TemporarySite : IDisposable
{
    private readonly List<LiteDbJournal> _opened = [];

    public string Path { get; } = Directory.CreateTempSubdirectory("site-").FullName;

    public FakeTimeProvider Clock { get; } = new();

    public string File(string name) => System.IO.Path.Combine(Path, "journal", name);

    /// <summary>A journal as another terminal would open it; it waits for nobody.</summary>
    public LiteDbJournal Open(string terminal = "control-room:tty1")
    {
        var journal = new LiteDbJournal(Path, terminal, Clock, wait: TimeSpan.Zero);
        _opened.Add(journal);
        return journal;
    }

    public void Dispose()
    {
        foreach (var journal in _opened)
            journal.Dispose();
        Directory.Delete(Path, recursive: true);
    }
}
