using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>The power went. Not an I/O error: no code that handles those may handle this.</summary>
internal sealed class PowerCutException : Exception;

internal enum DiskStep { Write, Truncate, Sync }

/// <summary>
/// A disk that keeps, when the power goes, what was brought to it and any part of the rest: sector by sector, in any order,
/// torn anywhere. Its step counter says before which write, truncation or sync something happens.
/// </summary>
internal sealed class SimulatedDisk : IDisk
{
    private readonly Dictionary<string, SimulatedFile> _files = new(StringComparer.Ordinal);

    /// <summary>Called before each step with its number; throws what shall go wrong there.</summary>
    public Action<int, DiskStep> Before { get; set; } = (_, _) => { };

    public int Steps { get; private set; }

    public long? LengthOf(string path) => Find(path)?.Now.LongLength;

    public IRawFile ForReading(string path) => Find(path) ?? throw new FileNotFoundException("no such file", path);

    public IRawFile ForWriting(string path) => Find(path) ?? (_files[Path.GetFileName(path)] = new SimulatedFile(this, []));

    public void Replace(string path, ReadOnlySpan<byte> content)
    {
        Step(DiskStep.Write); // before it, the old one; after it, the new one
        _files[Path.GetFileName(path)] = new SimulatedFile(this, content.ToArray()) { HasName = true };
    }

    public void CreateFolder(string path)
    {
        // There is one folder, and it is there.
    }

    public void SyncFolder(string path)
    {
        Step(DiskStep.Sync);
        foreach (var file in _files.Values)
            file.HasName = true;
    }

    /// <summary>What a disk holds that had the power cut now.</summary>
    public SimulatedDisk AfterPowerCut(Random chance)
    {
        var disk = new SimulatedDisk();
        foreach (var (name, file) in _files)
        {
            if (file.HasName || chance.Next(2) == 0)
                disk._files[name] = new SimulatedFile(disk, file.AfterPowerCut(chance)) { HasName = true };
        }

        return disk;
    }

    public void Step(DiskStep step) => Before(++Steps, step);

    private SimulatedFile? Find(string path) => _files.GetValueOrDefault(Path.GetFileName(path));
}

/// <summary>A file of that disk: what is on it for sure, what was asked since, and what a program sees.</summary>
internal sealed class SimulatedFile(SimulatedDisk disk, byte[] content) : IRawFile
{
    private const int Sector = 512;

    private readonly List<(long Offset, byte[]? Bytes)> _pending = [];
    private byte[] _sure = content;

    public byte[] Now { get; private set; } = content;

    /// <summary>True once the folder that names it was brought to the disk.</summary>
    public bool HasName { get; set; }

    public long Length
    {
        get => Now.LongLength;
        set
        {
            disk.Step(DiskStep.Truncate);
            _pending.Add((value, null));
            Now = Resized(Now, value);
        }
    }

    public int Read(Span<byte> into, long offset)
    {
        var there = (int)Math.Clamp(Now.Length - offset, 0, into.Length);
        Now.AsSpan((int)Math.Min(offset, Now.Length), there).CopyTo(into);
        return there;
    }

    public void Write(ReadOnlySpan<byte> bytes, long offset)
    {
        disk.Step(DiskStep.Write);
        _pending.Add((offset, bytes.ToArray()));
        Now = Written(Now, offset, bytes);
    }

    public void Sync()
    {
        disk.Step(DiskStep.Sync);
        _sure = Now;
        _pending.Clear();
    }

    public void Dispose()
    {
        // Others may have it open.
    }

    public byte[] AfterPowerCut(Random chance)
    {
        var kept = _sure;
        foreach (var (offset, bytes) in _pending)
        {
            if (bytes is null)
                kept = chance.Next(2) == 0 ? Resized(kept, offset) : kept;
            else
                kept = TornWrite(kept, offset, bytes, chance);
        }

        return kept;
    }

    private static byte[] TornWrite(byte[] content, long offset, byte[] bytes, Random chance)
    {
        var share = chance.Next(3); // none, any part, all
        for (var at = 0; at < bytes.Length; at += Sector)
        {
            if (share == 2 || (share == 1 && chance.Next(2) == 0))
                content = Written(content, offset + at, bytes.AsSpan(at, Math.Min(Sector, bytes.Length - at)));
        }

        return content;
    }

    private static byte[] Resized(byte[] content, long length)
    {
        var resized = content.ToArray();
        Array.Resize(ref resized, (int)length);
        return resized;
    }

    private static byte[] Written(byte[] content, long offset, ReadOnlySpan<byte> bytes)
    {
        var written = Resized(content, Math.Max(content.Length, offset + bytes.Length));
        bytes.CopyTo(written.AsSpan((int)offset));
        return written;
    }
}
