using System.Text;

namespace Logbook;

/// <summary>A file that appears under its name when it is whole and on the disk, or not at all.</summary>
internal sealed class WholeFile : IDisposable
{
    private readonly string _path;
    private readonly FileStream _draft;

    public WholeFile(string path)
    {
        _path = path;
        _draft = new FileStream(path + ".unfinished", FileMode.Create, FileAccess.Write, FileShare.None);
        Text = new StreamWriter(_draft, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { NewLine = "\n" };
    }

    public StreamWriter Text { get; }

    public void Keep()
    {
        Text.Flush();
        _draft.Flush(flushToDisk: true);
        File.Move(_draft.Name, _path, overwrite: true);
    }

    public void Dispose()
    {
        _draft.Dispose();
        File.Delete(_draft.Name);
    }
}
