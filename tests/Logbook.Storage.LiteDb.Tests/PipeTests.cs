using System.Diagnostics;
using Logbook.Journal;
using Logbook.Journal.Tests;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>A pipe under the name of one of the journal's files: opening it would wait for a writer that never comes.</summary>
public sealed class PipeTests : IDisposable
{
    private const int Records = 300;

    private readonly TemporarySite _site = new();

    public PipeTests()
    {
        using var journal = _site.Open();
        var state = State.Empty;
        for (var i = 1; i <= Records; i++)
            state = state.Apply(journal.Append(Drafts.Entry(Drafts.Morning.AddMinutes(i), $"SL-T1={i}"))).KeptNowAndThen(journal);
    }

    public void Dispose() => _site.Dispose();

    [OnUnixTheory]
    [InlineData("anchor")]
    [InlineData("gate.lock")]
    [InlineData("checkpoint.lock")]
    [InlineData("records.log")]
    [InlineData("records.db")]
    public void Whoever_reads_is_told_in_one_line(string name)
    {
        PutPipe(name);
        var journal = _site.Open();

        var trouble = Assert.Throws<JournalException>(() => (journal.Anchor(), Replay.Forward(journal, State.Empty)));

        Assert.Contains($"{_site.File(name)} is a pipe", trouble.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', trouble.Message);
    }

    [OnUnixTheory]
    [InlineData("anchor")]
    [InlineData("owner")]
    [InlineData("records.log")]
    [InlineData("records.db")]
    public void Whoever_saves_is_told_in_one_line(string name)
    {
        PutPipe(name);
        var journal = _site.Open();

        var trouble = Assert.Throws<JournalException>(() => journal.Append(Drafts.Entry(Drafts.Morning, "SL-T1=1")));

        Assert.Contains($"{_site.File(name)} is a pipe", trouble.Message, StringComparison.Ordinal);
    }

    [OnUnixTheory]
    [InlineData("states/256.json")]
    [InlineData("values/256.values")]
    public void What_follows_from_the_records_is_made_anew(string name)
    {
        PutPipe(name);
        var journal = _site.Open();

        Assert.Equal(Records, Replay.Forward(journal, State.Empty).Head.Seq);
        Assert.Equal(Records, journal.Series("SL-T1", Drafts.Morning.AddDays(-20), Drafts.Morning.AddDays(20)).Count);
        Assert.True(journal.Verify().Ok, journal.Verify().Why);
        Assert.True(new FileInfo(_site.File(name)).Length > 0);
    }

    private void PutPipe(string name)
    {
        var path = _site.File(name);
        Assert.True(File.Exists(path), path);
        File.Delete(path);
        using var made = Process.Start("mkfifo", path);
        made.WaitForExit();
        Assert.Equal(0, made.ExitCode);
    }
}

internal sealed class OnUnixTheoryAttribute : TheoryAttribute
{
    public OnUnixTheoryAttribute()
    {
        if (OperatingSystem.IsWindows())
            Skip = "there is no mkfifo";
    }
}
