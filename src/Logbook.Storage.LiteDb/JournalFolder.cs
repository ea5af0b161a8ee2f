using System.Globalization;
using System.Text;
using Logbook.Journal;
using Logbook.Storage.LiteDb.Disk;
using Logbook.Storage.LiteDb.Locks;

namespace Logbook.Storage.LiteDb;

/// <summary>The store's files beside one another.</summary>
/// <param name="path">The folder, absolute.</param>
/// <param name="disk">Where data, log and anchor are; the lock files are always real ones.</param>
internal sealed class JournalFolder(string path, IDisk disk)
{
    // About fourscore saves of a round; a reader replays this much at most.
    private const long UsualLog = 500 * FrameHeader.PageSize;

    /// <summary>The journal of a site.</summary>
    public static JournalFolder Of(string siteFolder) => new(Path.Combine(Path.GetFullPath(siteFolder), "journal"), new LocalDisk());

    /// <summary>True when this folder or one above it holds a journal, by whatever links it is reached.</summary>
    public static bool IsAbove(DirectoryInfo? folder) => folder is not null
        && (HoldsJournal(new JournalFolder(folder.FullName, new LocalDisk())) || IsAbove(folder.Parent) || (folder.LinkTarget is not null && IsAbove(folder.ResolveLinkTarget(returnFinalTarget: true) as DirectoryInfo)));

    // The lock is made before anything else, so it is there even when the journal has lost its data file.
    private static bool HoldsJournal(JournalFolder folder) => File.Exists(folder.OwnerLock) || File.Exists(folder.Data);

    private readonly string _anchor = Path.Combine(path, "anchor");

    /// <summary>How large the log's image may grow before a checkpoint.</summary>
    public long LogLimit { get; init; } = UsualLog;

    /// <summary>How long the log's file is from the start: its image with the frames' headers, and the save that reaches the limit.</summary>
    public long LogRoom => LogLimit + (8 * FrameHeader.PageSize);

    public string Data { get; } = Path.Combine(path, "records.db");

    public string Log { get; } = Path.Combine(path, "records.log");

    /// <summary>Held by the one who writes.</summary>
    public string OwnerLock { get; } = Path.Combine(path, "owner.lock");

    /// <summary>Who holds it, in words, for those who wait.</summary>
    public string OwnerName { get; } = Path.Combine(path, "owner");

    /// <summary>Shared by readers; held alone during a checkpoint.</summary>
    public string CheckpointLock { get; } = Path.Combine(path, "checkpoint.lock");

    /// <summary>Where states are kept that follow from the records: may be deleted at any time.</summary>
    public string States { get; } = Path.Combine(path, "states");

    /// <summary>Where the points' values are kept that follow from the records: may be deleted at any time.</summary>
    public string Values { get; } = Path.Combine(path, "values");

    /// <summary>Passed through on the way to <see cref="CheckpointLock"/>, so that readers cannot keep a checkpoint out for ever.</summary>
    public string Gate { get; } = Path.Combine(path, "gate.lock");

    /// <summary>False for a fresh site. A journal that lost its data file is not taken for a fresh one.</summary>
    /// <exception cref="JournalException">The data file is gone, but other files say that there was one.</exception>
    public bool HasJournal()
    {
        // Asked in this order: somebody may be making the journal just now, and the data file comes before these two.
        var kept = disk.LengthOf(_anchor) is not null || disk.LengthOf(Log) > 0;
        var there = disk.LengthOf(Data) is not null;
        return there || !kept
            ? there
            : throw new JournalException(JournalTrouble.Damaged, $"{Data} is missing, though a journal was kept here; nothing was changed");
    }

    /// <summary>Makes the folder, with the lock files for those who may only read there.</summary>
    public void Create()
    {
        disk.CreateFolder(path);
        LockFile.Make(Gate);
        LockFile.Make(CheckpointLock);
    }

    /// <summary>Where a journal is put together before it takes its place here.</summary>
    public JournalFolder Unfinished() => new(Path.Combine(path, "unfinished"), disk);

    public void DropAll()
    {
        if (Directory.Exists(path))
            Directory.Delete(path, recursive: true);
    }

    /// <summary>Takes a whole journal's data file where there is no record yet. Only the owner may.</summary>
    public void TakeData(JournalFolder whole)
    {
        MakeRoomForData();
        File.Move(whole.Data, Data, overwrite: true);
        SyncNames();
    }

    /// <summary>Makes an empty journal where there is none. Only the owner may.</summary>
    public void CreateJournal(Func<byte[]> newData)
    {
        if (!HasJournal())
        {
            MakeRoomForData();
            disk.Replace(Data, newData());
        }
        else if (disk.LengthOf(_anchor) is null)
        {
            SyncNames(); // whoever made it may have failed just there; with the first save the data file's name must be sure
        }
    }

    /// <summary>Returns when the files' names are on the disk.</summary>
    public void SyncNames() => disk.SyncFolder(path);

    private void MakeRoomForData()
    {
        // The log's name is on the disk before there is a data file: once that is found, nobody looks after the log's name again.
        disk.ForWriting(Log).Dispose();
        SyncNames();
    }

    public IRawFile OpenData(bool toWrite) => toWrite ? disk.ForWriting(Data) : disk.ForReading(Data);

    /// <summary>The log; a reader that finds none reads an empty one.</summary>
    public IRawFile OpenLog(bool toWrite) =>
        toWrite ? disk.ForWriting(Log) : disk.LengthOf(Log) is null ? new MemoryFile() : disk.ForReading(Log);

    /// <summary>True when the log's frames still end there. An empty log tells nothing: a checkpoint may have been.</summary>
    public bool LogEndsAt(LogEnd end)
    {
        using var log = OpenLog(toWrite: false);
        return end.At > 0 && log.Length >= end.At && FrameHeader.At(log, 0)?.Generation == end.Generation && FrameHeader.At(log, end.At) is null;
    }

    /// <summary>False when a file was deleted, replaced or changed by another program while the owner had it open.</summary>
    public bool StillHas(DurableDatabase database) => database.IsStillAt(disk, Data, Log);

    /// <summary>The head that was last noted outside the store; null when none was.</summary>
    public Head? ReadAnchor()
    {
        if (disk.LengthOf(_anchor) is not { } length)
            return null;
        var text = new byte[length];
        using (var file = disk.ForReading(_anchor))
            file.Read(text, 0);
        var words = Encoding.ASCII.GetString(text).Split(' ', StringSplitOptions.TrimEntries);
        return words.Length == 2 && long.TryParse(words[0], CultureInfo.InvariantCulture, out var seq)
            ? new Head(seq, words[1])
            : throw new JournalException(JournalTrouble.Damaged, $"{_anchor} is damaged: it should hold the last record's number and hash, by which a lost end is noticed. Move it away, then compare the journal with the last printed note (logbook verify --head HASH) or a backup; the next save notes the end anew");
    }

    public void NoteAnchor(Head head) => disk.Replace(_anchor, Encoding.ASCII.GetBytes(FormattableString.Invariant($"{head.Seq} {head.Hash}\n")));
}
