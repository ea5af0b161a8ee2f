using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>What was acknowledged is there after a kill, a torn write, a full disk.</summary>
public sealed class CrashTests : IDisposable
{
    private readonly TemporarySite _site = new();

    public void Dispose() => _site.Dispose();

    [Fact]
    public void Every_save_that_was_acknowledged_outlives_a_kill()
    {
        var acknowledged = new List<string>();
        foreach (var saves in (int[])[1, 40, 170, 260]) // before, in and after the first checkpoints
        {
            acknowledged.AddRange(Appender.Killed(_site.Path, saves));

            var journal = _site.Open();
            var there = journal.Read().Select(record => $"{record.Seq} {record.Hash}").ToHashSet(StringComparer.Ordinal);
            Assert.True(there.IsSupersetOf(acknowledged));
            Assert.True(journal.Verify().Ok, journal.Verify().Why);
        }

        Assert.Equal(Drafts.Line, _site.Open().Append(Drafts.Of(new Remark("after the kills", null, null))).Chain);
    }

    [Fact]
    public void A_full_disk_is_said_so_and_everything_acknowledged_is_there()
    {
        // No file may grow beyond this (1024 blocks): stands for a full disk, and needs no rights. The trap keeps the signal away.
        using var child = Appender.Start(_site.Path, "trap '' XFSZ; ulimit -f 1024;");
        var lines = child.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        child.WaitForExit();

        Assert.Equal(4, child.ExitCode);
        Assert.StartsWith("Full ", lines[^1], StringComparison.Ordinal);
        var journal = _site.Open();
        Assert.Equal(lines[..^1], journal.Read().Select(record => $"{record.Seq} {record.Hash}"), StringComparer.Ordinal);
        Assert.Equal(lines.Length, journal.Append(Drafts.Of(new Remark("there is room again", null, null))).Seq);
        Assert.True(journal.Verify().Ok);
    }

    [Fact]
    public void A_torn_last_save_is_cut_away_and_the_next_one_follows_the_last_sound_one()
    {
        Fill(5);
        var log = Log(out var end);
        for (var i = 1; i <= 3; i++)
        {
            // As a cut of power would leave it: a new frame's beginning without its end.
            File.WriteAllBytes(_site.File("records.log"), [.. log[..end], .. log[..(i * 1000)], .. log[(end + (i * 1000))..]]);
            var journal = _site.Open($"tty{i}");

            Assert.Equal(5, journal.Head.Seq);
            using (journal)
                Assert.Equal(6, journal.Append(Drafts.Of(new Remark("next", null, null))).Seq);
            Assert.True(_site.Open().Verify().Ok);
            File.Delete(_site.File("anchor"));
        }
    }

    [Fact]
    public void A_save_lost_from_the_end_is_noticed_by_the_head_that_was_noted_beside_the_journal()
    {
        Fill(5);
        _ = Log(out var end);
        using (var log = File.OpenWrite(_site.File("records.log")))
            log.SetLength(end - 1);
        var journal = _site.Open();

        var check = journal.Verify();
        var refused = Assert.Throws<JournalException>(() => journal.Append(Drafts.Of(new Remark("next", null, null))));

        Assert.Equal((false, 4L, 5L), (check.Ok, check.Records, check.FirstBad));
        Assert.Equal(JournalTrouble.Damaged, refused.Trouble);
        Assert.Contains("ends at record 4, but 5", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Damage_inside_the_log_is_reported_and_nothing_is_cut_away()
    {
        Fill(6);
        var log = Log(out var end);
        log[end / 2] ^= 1;
        File.WriteAllBytes(_site.File("records.log"), log);
        var journal = _site.Open();

        var refused = Assert.Throws<JournalException>(() => journal.Append(Drafts.Of(new Remark("next", null, null))));
        var unread = Assert.Throws<JournalException>(() => journal.Head);
        var check = journal.Verify();

        Assert.Equal((JournalTrouble.Damaged, JournalTrouble.Damaged), (refused.Trouble, unread.Trouble));
        Assert.Contains("the log is damaged at byte", refused.Message, StringComparison.Ordinal);
        Assert.False(check.Ok);
        Assert.Equal(check.Records + 1, check.FirstBad);
        Assert.InRange(check.Records, 1, 5);
        Assert.Equal(log, File.ReadAllBytes(_site.File("records.log")));
    }

    [Fact]
    public void A_data_file_that_disappeared_is_not_taken_for_a_fresh_site()
    {
        Fill(3);
        File.Delete(_site.File("records.db"));
        var journal = _site.Open();

        Assert.Equal(JournalTrouble.Damaged, Assert.Throws<JournalException>(() => journal.Head).Trouble);
        Assert.Equal(JournalTrouble.Damaged, Assert.Throws<JournalException>(() => journal.Append(Drafts.Of(new Remark("next", null, null)))).Trouble);
        Assert.False(journal.Verify().Ok);
        Assert.False(File.Exists(_site.File("records.db")));
    }

    [Theory]
    [InlineData("records.log")]
    [InlineData("records.db")]
    public void A_file_that_was_replaced_by_its_copy_under_the_writer_takes_no_more_saves(string name)
    {
        var journal = _site.Open();
        journal.Append(Drafts.Of(new Remark("one", null, null)));
        var (file, copy) = (_site.File(name), _site.File("copy"));
        File.Copy(file, copy);
        File.SetLastWriteTimeUtc(copy, File.GetLastWriteTimeUtc(file).AddSeconds(-1));
        File.Move(copy, file, overwrite: true);

        var refused = Assert.Throws<JournalException>(() => journal.Append(Drafts.Of(new Remark("two", null, null))));

        Assert.Equal(JournalTrouble.Damaged, refused.Trouble);
        Assert.Equal(1, _site.Open().Head.Seq);
    }

    [Fact]
    public void A_log_that_another_one_was_copied_into_takes_no_more_saves()
    {
        using var elsewhere = new TemporarySite();
        using (var other = elsewhere.Open())
            other.Append(Drafts.Of(new Remark("another journal", null, null)));
        var journal = _site.Open();
        journal.Append(Drafts.Of(new Remark("one", null, null)));
        using (var log = new FileStream(_site.File("records.log"), FileMode.Open, FileAccess.Write, FileShare.ReadWrite)) // as cp does
            log.Write(File.ReadAllBytes(elsewhere.File("records.log")));

        var refused = Assert.Throws<JournalException>(() => journal.Append(Drafts.Of(new Remark("two", null, null))));

        Assert.Equal(JournalTrouble.Damaged, refused.Trouble);
    }

    [Theory]
    [InlineData("records.log")]
    [InlineData("records.db")]
    public void A_file_deleted_under_the_writer_takes_no_more_saves(string name)
    {
        var journal = _site.Open();
        journal.Append(Drafts.Of(new Remark("one", null, null)));
        File.Delete(_site.File(name));

        for (var attempt = 0; attempt < 2; attempt++)
        {
            var refused = Assert.Throws<JournalException>(() => journal.Append(Drafts.Of(new Remark("two", null, null))));
            Assert.Equal(JournalTrouble.Damaged, refused.Trouble);
        }
    }

    /// <summary>The log as it lies on the disk; its saves end before <paramref name="end"/>, and zeros follow.</summary>
    private byte[] Log(out int end)
    {
        var log = File.ReadAllBytes(_site.File("records.log"));
        end = 0;
        while (FrameHeader.Read(log.AsSpan(end)) is { } frame)
            end += FrameHeader.Size + frame.Length;
        return log;
    }

    private void Fill(int records)
    {
        using var journal = _site.Open();
        for (var i = 1; i <= records; i++)
            journal.Append(Drafts.Entry(Drafts.Morning.AddHours(i), $"SL-T1=10{i}"));
    }
}
