using System.Globalization;

namespace Logbook.Screens;

/// <summary>
/// The drafts of a site's terminals: one file a session, each held by its session. A file that nobody holds was left behind
/// by one that ended in the middle, and is offered to whoever comes next.
/// </summary>
public sealed class DraftFolder : IDisposable
{
    private readonly string _folder;
    private readonly string _name;
    private readonly Dictionary<string, DraftFile> _left = new(StringComparer.Ordinal);
    private DraftFile? _own;

    /// <param name="folder">Where the drafts are; made when the first one is kept.</param>
    /// <param name="terminal">host:tty, part of the files' names.</param>
    public DraftFolder(string folder, string terminal)
    {
        _folder = folder;
        _name = "draft-" + string.Concat(terminal.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-'));
        string[] paths = Directory.Exists(folder) ? Directory.GetFiles(folder, "draft-*.jsonl") : [];
        foreach (var path in paths.Order(StringComparer.Ordinal))
        {
            if (DraftFile.TryHold(path) is { } file)
            {
                Hold(file);
            }
        }
    }

    /// <summary>What was left behind, oldest file name first.</summary>
    internal IReadOnlyList<LeftDraft> Left => [.. _left.SelectMany(f => Draft.Of(f.Value.Read()).Select(d => new LeftDraft(f.Key, d)))];

    internal void Keep(DraftLine line)
    {
        _own ??= Create();
        _own.Keep(line);
    }

    internal void Drop()
    {
        _own?.Drop();
        _own = null;
    }

    /// <summary>Makes a file that was left behind this session's own.</summary>
    internal void TakeUp(string file)
    {
        _own = _left[file];
        _left.Remove(file);
    }

    /// <summary>The journal has all of it.</summary>
    internal void Forget(string file)
    {
        _left[file].Drop();
        _left.Remove(file);
    }

    public void Dispose()
    {
        _own?.Dispose();
        foreach (var file in _left.Values)
        {
            file.Dispose();
        }
    }

    /// <summary>A file is one draft: what lies together in one, though it should not, is parted.</summary>
    private void Hold(DraftFile file)
    {
        var drafts = Draft.Of(file.Read());
        if (drafts.Count == 1)
        {
            _left.Add(file.Name, file);
            return;
        }

        foreach (var draft in drafts)
        {
            var part = Create();
            draft.Lines.ForEach(part.Keep);
            _left.Add(part.Name, part);
        }

        file.Drop();
    }

    private DraftFile Create()
    {
        Directory.CreateDirectory(_folder);
        for (var n = 1; ; n++)
        {
            var path = Path.Combine(_folder, string.Create(CultureInfo.InvariantCulture, $"{_name}-{n}.jsonl"));
            if (!File.Exists(path))
            {
                return DraftFile.Create(path);
            }
        }
    }
}
