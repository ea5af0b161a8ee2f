using System.Globalization;
using Logbook.Journal;
using Logbook.Journal.Tests;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>A shift of saves in bursts, as terminals make them, on a disk that may fail or lose power; and what is found of it afterwards.</summary>
internal sealed class SimulatedShift
{
    public int Saves { get; init; } = 24;

    public int SavesPerBurst { get; init; } = 7;

    public int RecordSize { get; init; } = 3000;

    /// <summary>Small enough for several checkpoints in a shift.</summary>
    public long LogLimit { get; init; } = 30 * FrameHeader.PageSize;

    public List<JournalRecord> Acknowledged { get; } = [];

    public List<JournalException> Refused { get; } = [];

    public void WorkOn(SimulatedDisk disk)
    {
        using var site = new TemporarySite();
        for (var save = 0; save < Saves;)
        {
            using var journal = Open(site, disk);
            for (var i = 0; i < SavesPerBurst && save < Saves; i++, save++)
            {
                try
                {
                    Acknowledged.Add(journal.Append(Drafts.Of(new Remark(new string('x', RecordSize) + save.ToString(CultureInfo.InvariantCulture), null, null))));
                }
                catch (JournalException trouble)
                {
                    Refused.Add(trouble);
                }
            }
        }
    }

    /// <summary>Why the disk does not hold every acknowledged record and a journal that goes on; null when it does.</summary>
    /// <param name="unacknowledged">How many records may be there that nobody was told of: a save that was under way may have reached the disk.</param>
    public string? WhyNot(SimulatedDisk disk, int unacknowledged)
    {
        using var site = new TemporarySite();
        using var journal = Open(site, disk);
        try
        {
            if (journal.Verify() is { Ok: false } bad)
                return $"not sound: {bad.Why}";
            var there = journal.Read().ToDictionary(r => r.Seq, r => r.Hash);
            if (Acknowledged.Find(r => there.GetValueOrDefault(r.Seq) != r.Hash) is { } lost)
                return $"lost: record {lost.Seq}";
            if (there.Count > Acknowledged.Count + unacknowledged)
                return $"{there.Count} records, but {Acknowledged.Count} were acknowledged";
            return journal.Append(Drafts.Of(new Remark("after", null, null))).Seq == there.Count + 1 && journal.Verify().Ok ? null : "the next save does not follow";
        }
        catch (JournalException refused)
        {
            return $"refused: {refused.Message}";
        }
    }

    private LiteDbJournal Open(TemporarySite site, IDisk disk)
    {
        var path = Path.Combine(site.Path, "journal");
        Directory.CreateDirectory(path); // for the lock files, which are real ones
        return new(new JournalFolder(path, disk) { LogLimit = LogLimit }, "tty1", site.Clock, TimeSpan.Zero);
    }
}
