using Logbook.Journal;
using Logbook.Storage.LiteDb;

namespace Logbook.Tests;

/// <summary>Long work says how far it is to a person at a terminal and to nobody else, and Ctrl+C ends it where nothing is half done.</summary>
public sealed class AStopLeavesNothingHalfDone(LongJournal journal) : IClassFixture<LongJournal>, IDisposable
{
    private const int Stopped = 130; // as shells count it

    private readonly Cli _cli = new();
    private readonly PseudoTerminal _terminal = new();

    public void Dispose()
    {
        _terminal.Dispose();
        _cli.Dispose();
    }

    [Fact]
    public void Verification_stops() => Interrupted(journal.Folder, "verifying: ", "verify");

    [Fact]
    public void A_stopped_export_leaves_no_file()
    {
        Interrupted(journal.Folder, "exporting: ", "export", "--format", "jsonl", "--out", Path.Combine(_cli.Folder, "log.jsonl"));

        Assert.Empty(Directory.GetFiles(_cli.Folder, "log.jsonl*"));
    }

    [Fact]
    public void A_stopped_backup_leaves_no_folder()
    {
        var folder = Path.Combine(_cli.Folder, "backup");

        Interrupted(journal.Folder, "copying: ", "backup", folder);

        Assert.False(Directory.Exists(folder));
        Assert.Equal(0, _cli.Run("backup", folder, "--site", journal.Small).Code);
    }

    [Fact]
    public void A_stopped_restore_leaves_an_empty_site()
    {
        Interrupted(_cli.Folder, "copying: ", "restore", journal.Folder);

        Assert.Equal(0, _cli.Records);
        Assert.Equal(0, _cli.Run("restore", journal.Small).Code);
        Assert.Equal(1, _cli.Records);
    }

    [Fact]
    public void A_stopped_demo_leaves_no_folder()
    {
        var folder = Path.Combine(_cli.Folder, "demo");

        Interrupted(_cli.Folder, "typing, days: ", "demo", "--days", "60", "--no-screen", "--in", folder);

        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public void A_stopped_import_has_whole_entries_and_the_same_command_brings_the_rest()
    {
        const int rows = 200;
        _cli.Write("past.csv", AKillLosesNothing.Past(rows));

        Interrupted(_cli.Folder, "importing, entries: ", "import", "past.csv", "--by", "op1");

        Assert.InRange(AKillLosesNothing.Imported(_cli.Folder), 1, rows - 1);
        Assert.Equal(0, _cli.Run("import", "past.csv", "--by", "op1").Code);
        Assert.Equal(rows, AKillLosesNothing.Imported(_cli.Folder));
    }

    [Fact]
    public void Where_nobody_watches_nothing_is_said_of_progress()
    {
        var (code, text, error) = RealProgram.Run(journal.Folder, "verify");

        Assert.Equal((0, ""), (code, error));
        Assert.StartsWith("sound: ", text, StringComparison.Ordinal);
    }

    /// <summary>Starts a command at a terminal, interrupts it when it says how far it is, and expects it to end at once and say so.</summary>
    private void Interrupted(string site, string says, params string[] command)
    {
        using var program = RealProgram.StartAt(_terminal, site, command);
        _terminal.ReadUntil(says);
        program.Interrupt();

        Assert.Equal(Stopped, program.WaitForEnd().Code);
        Assert.Contains("stopped", _terminal.ReadUntil("\n"), StringComparison.Ordinal);
    }
}

/// <summary>A site with a journal that takes a while to read, and one with a single record.</summary>
public sealed class LongJournal : IDisposable
{
    private const int Records = 10_000;
    private readonly string _root = Directory.CreateTempSubdirectory("logbook-long-").FullName;

    public LongJournal()
    {
        JournalCopy.Make(Remarks(Records), noted: null, Folder, "test", TimeSpan.Zero, LongWork.Unwatched);
        JournalCopy.Make(Remarks(1), noted: null, Small, "test", TimeSpan.Zero, LongWork.Unwatched);
    }

    public string Folder => Directory.CreateDirectory(Path.Combine(_root, "long")).FullName;

    public string Small => Directory.CreateDirectory(Path.Combine(_root, "small")).FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static IEnumerable<ReadOnlyMemory<byte>> Remarks(int count)
    {
        var at = new DateTimeOffset(2026, 11, 1, 0, 0, 0, TimeSpan.Zero);
        var head = Head.Empty;
        for (var i = 0; i < count; i++)
        {
            var record = JournalRecord.Seal(new(new Remark("calm", null, null), "line-1", at.AddMinutes(i), at.AddMinutes(i), "2026-11-01-D-A", "op1", "test:1"), head);
            head = Head.Of(record);
            yield return record.Bytes;
        }
    }
}
