using System.Text;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>One draft's file, held by one session. Only ever appended to; deleted when the journal has all of it.</summary>
internal sealed class DraftFile : IDisposable
{
    private readonly FileStream _stream;

    private DraftFile(FileStream stream) => _stream = stream;

    public string Name => _stream.Name;

    /// <summary>A file that did not exist before.</summary>
    public static DraftFile Create(string path) =>
        new(new FileStream(path, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None));

    /// <summary>A file that is there; null while another session holds it, when it is gone or somebody else's.</summary>
    public static DraftFile? TryHold(string path) =>
        OnDisk.Try(() => new DraftFile(new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None)), out _);

    public IReadOnlyList<DraftLine> Read()
    {
        _stream.Position = 0;
        using var reader = new StreamReader(_stream, Encoding.UTF8, leaveOpen: true);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(DraftLine.Parse).OfType<DraftLine>()];
    }

    /// <summary>Returns when the line is on the disk.</summary>
    public void Keep(DraftLine line)
    {
        _stream.Position = _stream.Length;
        var torn = _stream.Length > 0 && LastByte() != '\n';
        _stream.Write(Encoding.UTF8.GetBytes((torn ? "\n" : "") + line.ToJson() + "\n"));
        _stream.Flush(flushToDisk: true);
    }

    public void Drop()
    {
        File.Delete(Name);
        Dispose();
    }

    public void Dispose() => _stream.Dispose();

    private int LastByte()
    {
        _stream.Position = _stream.Length - 1;
        return _stream.ReadByte();
    }
}
