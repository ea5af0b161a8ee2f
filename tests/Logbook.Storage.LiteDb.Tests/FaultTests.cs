using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>A shift of saves on a disk that loses power or fails at one step of them, every few steps of the whole.</summary>
public sealed class FaultTests
{
    private const int Saves = 24;
    private const int SavesPerBurst = 7;

    [Fact]
    public void Whenever_the_power_goes_every_acknowledged_record_is_there_and_the_next_save_works()
    {
        foreach (var step in EveryFewSteps())
        {
            var disk = new SimulatedDisk { Before = (now, _) => Throw(now >= step, new PowerCutException()) };
            var acknowledged = new List<JournalRecord>();
            Assert.Throws<PowerCutException>(() => Shift(disk, acknowledged));

            MustHold(disk.AfterPowerCut(new Random(step)), acknowledged, atMost: acknowledged.Count + 1);
        }
    }

    [Theory]
    [InlineData(28, JournalTrouble.Full)] // ENOSPC
    [InlineData(5, JournalTrouble.Unreadable)] // EIO, as a failing fsync gives it
    public void A_step_that_fails_once_refuses_that_save_at_most_and_the_shift_goes_on(int error, JournalTrouble trouble)
    {
        foreach (var step in EveryFewSteps())
        {
            var disk = new SimulatedDisk { Before = (now, _) => Throw(now == step, new IOException("the disk failed", error)) };
            var acknowledged = new List<JournalRecord>();
            var refused = Shift(disk, acknowledged);

            Assert.All(refused, r => Assert.Equal(trouble, r.Trouble));
            Assert.Equal(Saves, acknowledged.Count + refused.Count);
            Assert.InRange(refused.Count, 0, 1);
            MustHold(disk.AfterPowerCut(new Random(step)), acknowledged, atMost: acknowledged.Count);
        }
    }

    [Fact]
    public void A_disk_that_stays_full_refuses_every_further_save_and_keeps_what_was_acknowledged()
    {
        foreach (var step in EveryFewSteps())
        {
            var disk = new SimulatedDisk { Before = (now, kind) => Throw(now >= step && kind == DiskStep.Write, new IOException("no space left on device", 28)) };
            var acknowledged = new List<JournalRecord>();
            var refused = Shift(disk, acknowledged);

            Assert.All(refused, r => Assert.Equal(JournalTrouble.Full, r.Trouble));
            Assert.Equal(Saves, acknowledged.Count + refused.Count);
            MustHold(disk.AfterPowerCut(new Random(step)), acknowledged, atMost: acknowledged.Count + 1);
        }
    }

    /// <summary>A fixed sample of the boundaries between the steps of an undisturbed shift.</summary>
    private static IEnumerable<int> EveryFewSteps()
    {
        var disk = new SimulatedDisk();
        var acknowledged = new List<JournalRecord>();
        Assert.Empty(Shift(disk, acknowledged));
        Assert.Equal(Saves, acknowledged.Count);
        return Enumerable.Range(1, disk.Steps).Where(step => step < 12 || step % 5 == 0);
    }

    /// <summary>Saves in bursts, as terminals do; returns the refusals.</summary>
    private static List<JournalException> Shift(SimulatedDisk disk, List<JournalRecord> acknowledged)
    {
        using var site = new TemporarySite();
        var refused = new List<JournalException>();
        for (var save = 0; save < Saves;)
        {
            using var journal = Open(site, disk);
            for (var i = 0; i < SavesPerBurst && save < Saves; i++, save++)
            {
                try
                {
                    acknowledged.Add(journal.Append(Drafts.Of(new Remark(new string('x', 3000) + save, null, null))));
                }
                catch (JournalException trouble)
                {
                    refused.Add(trouble);
                }
            }
        }

        return refused;
    }

    private static void MustHold(SimulatedDisk disk, List<JournalRecord> acknowledged, int atMost)
    {
        using var site = new TemporarySite();
        using var journal = Open(site, disk);
        var check = journal.Verify();
        Assert.True(check.Ok, check.Why);
        Assert.InRange(check.Records, acknowledged.Count, atMost);
        Assert.Equal(acknowledged.Select(r => r.Hash), journal.Read().Take(acknowledged.Count).Select(r => r.Hash), StringComparer.Ordinal);
        Assert.Equal(check.Records + 1, journal.Append(Drafts.Of(new Remark("after", null, null))).Seq);
        Assert.True(journal.Verify().Ok);
    }

    private static LiteDbJournal Open(TemporarySite site, IDisk disk)
    {
        var path = Path.Combine(site.Path, "journal");
        Directory.CreateDirectory(path); // for the lock files, which are real ones
        var smallLog = 30 * FrameHeader.PageSize; // several checkpoints in a shift
        return new(new JournalFolder(path, disk) { LogLimit = smallLog }, "tty1", site.Clock, TimeSpan.Zero);
    }

    private static void Throw(bool now, Exception trouble)
    {
        if (now)
            throw trouble;
    }
}
