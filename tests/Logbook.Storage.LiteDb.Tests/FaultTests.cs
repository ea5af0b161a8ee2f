using Logbook.Journal;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>A shift of saves on a disk that loses power or fails at one step of them, every few steps of the whole.</summary>
public sealed class FaultTests
{
    [Fact]
    public void Whenever_the_power_goes_every_acknowledged_record_is_there_and_the_next_save_works()
    {
        foreach (var step in EveryFewSteps())
        {
            var disk = new SimulatedDisk(new Random(step)) { Before = (now, _) => Throw(now >= step, new PowerCutException()) };
            var shift = new SimulatedShift();
            Assert.Throws<PowerCutException>(() => shift.WorkOn(disk));

            MustHold(shift, disk, unacknowledged: 1, step);
        }
    }

    [Fact]
    public void The_power_may_go_again_while_the_journal_recovers()
    {
        foreach (var seed in Enumerable.Range(440, 60))
            Assert.True(PowerCuts.WhyNot(seed, out _) is var why && why is null, $"seed {seed}: {why}");
    }

    [Theory]
    [InlineData(28, JournalTrouble.Full)] // ENOSPC
    [InlineData(5, JournalTrouble.Unreadable)] // EIO, as a failing fsync gives it
    public void A_step_that_fails_once_refuses_that_save_at_most_and_the_shift_goes_on(int error, JournalTrouble trouble)
    {
        foreach (var step in EveryFewSteps())
        {
            var disk = new SimulatedDisk(new Random(step)) { Before = (now, _) => Throw(now == step, new IOException("the disk failed", error)) };
            var shift = new SimulatedShift();
            shift.WorkOn(disk);

            Assert.All(shift.Refused, r => Assert.Equal(trouble, r.Trouble));
            Assert.Equal(shift.Saves, shift.Acknowledged.Count + shift.Refused.Count);
            Assert.InRange(shift.Refused.Count, 0, 1);
            MustHold(shift, disk, unacknowledged: 0, step);
        }
    }

    [Fact]
    public void A_disk_that_stays_full_refuses_every_further_save_and_keeps_what_was_acknowledged()
    {
        foreach (var step in EveryFewSteps())
        {
            var disk = new SimulatedDisk(new Random(step)) { Before = (now, kind) => Throw(now >= step && kind == DiskStep.Write, new IOException("no space left on device", 28)) };
            var shift = new SimulatedShift();
            shift.WorkOn(disk);

            Assert.All(shift.Refused, r => Assert.Equal(JournalTrouble.Full, r.Trouble));
            Assert.Equal(shift.Saves, shift.Acknowledged.Count + shift.Refused.Count);
            MustHold(shift, disk, unacknowledged: 1, step);
        }
    }

    /// <summary>A fixed sample of the boundaries between the steps of an undisturbed shift.</summary>
    private static IEnumerable<int> EveryFewSteps()
    {
        var disk = new SimulatedDisk(new Random(0));
        var shift = new SimulatedShift();
        shift.WorkOn(disk);
        Assert.Empty(shift.Refused);
        Assert.Equal(shift.Saves, shift.Acknowledged.Count);
        return Enumerable.Range(1, disk.Steps).Where(step => step < 16 || step % 5 == 0);
    }

    private static void MustHold(SimulatedShift shift, SimulatedDisk disk, int unacknowledged, int step)
    {
        var why = shift.WhyNot(disk.AfterPowerCut(), unacknowledged);
        Assert.True(why is null, $"step {step}: {why}");
    }

    private static void Throw(bool now, Exception trouble)
    {
        if (now)
            throw trouble;
    }
}
