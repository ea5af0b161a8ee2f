using Logbook.Storage.LiteDb.Disk;

namespace Logbook.Storage.LiteDb.Tests;

/// <summary>The power went. Not an I/O error: no code that handles those may handle this.</summary>
internal sealed class PowerCutException : Exception;

internal enum DiskStep { Write, Truncate, Sync }

/// <summary>
/// A disk that keeps, when the power goes, what was brought to it and any part of the rest: sector by sector, in any order,
/// torn anywhere, a name before or after what it names. A sync that fails leaves any part of what it was asked for, and the
/// next one does not make up for it: so do file systems that drop what they could not write. Its step counter says before
/// which write, truncation or sync something happens.
/// </summary>
/// <param name="chance">What decides which part is kept.</param>
internal sealed class SimulatedDisk(Random chance) : IDisk
{
    private readonly Dictionary<string, SimulatedFile> _files = new(StringComparer.Ordinal);

    public Random Chance { get; } = chance;

    /// <summary>Called before each step with its number; throws what shall go wrong there.</summary>
    public Action<int, DiskStep> Before { get; set; } = (_, _) => { };

    public int Steps { get; private set; }

    public long? LengthOf(string path) => Find(path)?.Now.LongLength;

    public bool IsAt(string path, IRawFile file) => ReferenceEquals(Find(path), file);

    public IRawFile ForReading(string path) => Find(path) ?? throw new FileNotFoundException("no such file", path);

    public IRawFile ForWriting(string path) => Find(path) ?? (_files[Path.GetFileName(path)] = new SimulatedFile(this, []));

    public void Replace(string path, ReadOnlySpan<byte> content)
    {
        Step(DiskStep.Write); // of the draft, which is on the disk before it gets the name
        _files[Path.GetFileName(path)] = new SimulatedFile(this, content.ToArray()) { Before = Find(path) };
        SyncFolder(path);
    }

    public void CreateFolder(string path)
    {
        // There is one folder, and it is there.
    }

    public void SyncFolder(string path)
    {
        Step(DiskStep.Sync);
        foreach (var file in _files.Values)
            file.NameIsSure();
    }

    /// <summary>What a disk holds that had the power cut now.</summary>
    public SimulatedDisk AfterPowerCut()
    {
        var disk = new SimulatedDisk(Chance);
        foreach (var (name, file) in _files)
        {
            if (file.OfThatName() is { } kept)
                disk._files[name] = new SimulatedFile(disk, kept.AfterPowerCut()) { HasName = true };
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

    /// <summary>The file that had the name before, which may have it again after a power cut.</summary>
    public SimulatedFile? Before { get; set; }

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
        try
        {
            disk.Step(DiskStep.Sync);
        }
        catch (IOException)
        {
            _sure = AfterPowerCut();
            _pending.Clear();
            throw;
        }

        _sure = _pending.Aggregate(_sure, (content, step) => step.Bytes is { } bytes ? Written(content, step.Offset, bytes) : Resized(content, step.Offset));
        _pending.Clear();
    }

    public void NameIsSure() => (HasName, Before) = (true, null);

    /// <summary>The file that has this one's name after a power cut; null when there is none.</summary>
    public SimulatedFile? OfThatName() => HasName || disk.Chance.Next(2) == 0 ? this : Before?.OfThatName();

    public void Dispose()
    {
        // Others may have it open.
    }

    public byte[] AfterPowerCut()
    {
        var kept = _sure;
        foreach (var (offset, bytes) in _pending)
        {
            if (bytes is null)
                kept = disk.Chance.Next(2) == 0 ? Resized(kept, offset) : kept;
            else
                kept = TornWrite(kept, offset, bytes);
        }

        return kept;
    }

    private byte[] TornWrite(byte[] content, long offset, byte[] bytes)
    {
        var share = disk.Chance.Next(3); // none, any part, all
        var length = content.LongLength;
        var torn = Resized(content, Math.Max(length, offset + bytes.Length));
        for (var at = 0; at < bytes.Length; at += Sector)
        {
            if (share == 2 || (share == 1 && disk.Chance.Next(2) == 0))
            {
                var sector = TornSector(bytes.AsSpan(at, Math.Min(Sector, bytes.Length - at)), whole: share == 2);
                sector.CopyTo(torn, offset + at);
                length = Math.Max(length, offset + at + sector.Length);
            }
        }

        return Resized(torn, length);
    }

    // Most sectors are kept whole; now and then the power goes within one, and what follows in it is anything.
    private byte[] TornSector(ReadOnlySpan<byte> sector, bool whole)
    {
        var kept = sector.ToArray();
        if (!whole && disk.Chance.Next(16) == 0)
            disk.Chance.NextBytes(kept.AsSpan(disk.Chance.Next(kept.Length)));
        return kept;
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
