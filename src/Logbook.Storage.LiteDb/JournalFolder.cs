using Logbook.Journal;
using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb;

/// <summary>The store's files beside one another.</summary>
internal sealed class JournalFolder(string path)
{
    private readonly string _anchor = Path.Combine(path, "anchor");

    public string Data { get; } = Path.Combine(path, "records.db");

    public string Log { get; } = Path.Combine(path, "records.log");

    /// <summary>Held by the one who writes.</summary>
    public string OwnerLock { get; } = Path.Combine(path, "owner.lock");

    /// <summary>Who holds it, in words, for those who wait.</summary>
    public string OwnerName { get; } = Path.Combine(path, "owner");

    /// <summary>Shared by readers; held alone during a checkpoint.</summary>
    public string CheckpointLock { get; } = Path.Combine(path, "checkpoint.lock");

    /// <summary>Passed through on the way to <see cref="CheckpointLock"/>, so that readers cannot keep a checkpoint out for ever.</summary>
    public string Gate { get; } = Path.Combine(path, "gate.lock");

    /// <summary>False for a fresh site. A journal that lost its data file is not taken for a fresh one.</summary>
    /// <exception cref="JournalException">The data file is gone, but other files say that there was one.</exception>
    public bool HasJournal()
    {
        if (File.Exists(Data))
            return true;
        if (File.Exists(_anchor) || (File.Exists(Log) && new FileInfo(Log).Length > 0))
            throw new JournalException(JournalTrouble.Damaged, $"{Data} is missing, though a journal was kept here; nothing was changed");
        return false;
    }

    public void Create() => Folder.Create(path);

    /// <summary>Makes an empty journal where there is none. Only the owner may.</summary>
    public void CreateJournal(Func<byte[]> newData)
    {
        if (HasJournal())
            return;
        using (DiskFile.ForWriting(Log))
        {
            // Made empty, before the data file gets its name.
        }

        Folder.Replace(Data, newData());
    }

    /// <summary>The head that was last noted outside the store; null when none was.</summary>
    public Head? ReadAnchor()
    {
        if (!File.Exists(_anchor))
            return null;
        var words = File.ReadAllText(_anchor).Split(' ', StringSplitOptions.TrimEntries);
        return words.Length == 2 && long.TryParse(words[0], System.Globalization.CultureInfo.InvariantCulture, out var seq)
            ? new Head(seq, words[1])
            : throw new JournalException(JournalTrouble.Damaged, $"{_anchor} cannot be read; it holds a sequence number and a hash");
    }

    public void NoteAnchor(Head head) =>
        Folder.Replace(_anchor, System.Text.Encoding.ASCII.GetBytes(FormattableString.Invariant($"{head.Seq} {head.Hash}\n")));
}
