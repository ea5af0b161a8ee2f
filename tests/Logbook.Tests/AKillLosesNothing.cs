using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Logbook.Tests;

/// <summary>The built program against SIGKILL. The soak does the same thousands of times: <c>dotnet cake --target=Soak</c>.</summary>
public sealed class AKillLosesNothing : IDisposable
{
    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void Every_record_that_was_answered_is_there_after_kills_at_any_moment()
    {
        var recorder = new KilledRecorder(_cli.Folder, new Random(4));
        for (var i = 0; i < 5; i++)
        {
            recorder.Once();
        }

        Assert.Null(recorder.WhyNot());
        var (code, _, error) = RealProgram.Run(_cli.Folder, "record", "SL-F1=300", "--by", "op1");
        Assert.Equal((0, ""), (code, error));
    }

    [Fact]
    public void A_writer_that_was_killed_gives_its_turn_away_at_once()
    {
        _cli.Run("record", "SL-F1=300", "--by", "op1");
        var owner = Path.Combine(_cli.Folder, "journal", "owner");
        var before = File.ReadAllText(owner);
        using (var importing = RealProgram.Start(_cli.Folder, "import", _cli.Write("past.csv", Past(100)), "--by", "op1"))
        {
            while (!importing.HasEnded && File.ReadAllText(owner) == before)
            {
                Thread.Sleep(1);
            }

            importing.Kill();
            Assert.NotEqual(0, importing.WaitForEnd().Code);
        }

        Assert.Equal(0, _cli.Run("remark", "after the kill", "--by", "op1", "--wait", "0").Code);
        Assert.Equal(0, _cli.Run("verify").Code);
        Assert.True(Imported(_cli.Folder) < 100);
        Assert.Equal(0, _cli.Run("import", "past.csv", "--by", "op1").Code);
        Assert.Equal(100, Imported(_cli.Folder));
    }

    /// <summary>How many entries of the journal were imported.</summary>
    internal static int Imported(string folder)
    {
        using var journal = new LiteDbJournal(folder, "counting", TimeProvider.System);
        return journal.Read().Count(r => r.Body is Entry { Imported: not null });
    }

    /// <summary>A long file of readings, an hour apart.</summary>
    internal static string Past(int hours)
    {
        var first = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
        return "point,value,at\n" + string.Concat(Enumerable.Range(0, hours).Select(h => $"SL-F1,{250 + (h % 97)},{first.AddHours(h):yyyy-MM-dd'T'HH:mm:ss'Z'}\n"));
    }
}
