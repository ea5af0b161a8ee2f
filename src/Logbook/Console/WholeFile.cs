using System.Text;

namespace Logbook;

/// <summary>A new file that appears under its name when it is whole and on the disk, or not at all.</summary>
internal sealed class WholeFile : IDisposable
{
    private readonly string _path;
    private readonly FileStream _draft;

    public WholeFile(string path)
    {
        _path = path;
        _draft = new FileStream(Draft(path), FileMode.CreateNew, FileAccess.Write, FileShare.None);
        Text = new StreamWriter(_draft, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { NewLine = "\n" };
    }

    public StreamWriter Text { get; }

    /// <summary>The file's name until it is whole.</summary>
    public static string Draft(string path) => path + ".part";

    public void Keep()
    {
        Text.Flush();
        _draft.Flush(flushToDisk: true);
        File.Move(_draft.Name, _path, overwrite: false);
    }

    public void Dispose()
    {
        _draft.Dispose();
        File.Delete(_draft.Name);
    }
}
