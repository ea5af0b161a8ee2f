using System.Security.Cryptography;

namespace Logbook.PluginHost;

/// <summary>Looks at a plug-in's files before any of them is opened as code.</summary>
internal static class FolderVetting
{
    /// <summary>The folder's files with their hashes as they lie there now, or why nobody should trust it.</summary>
    public static IReadOnlyDictionary<string, string>? Hashes(string folder, string name, out PluginTrouble? trouble)
    {
        var info = new DirectoryInfo(folder);
        trouble = !IsPlainName(name) ? BadName(name)
            : !info.Exists ? PluginTrouble.Failed("missing", $"there is no folder {folder}")
            : UnsafeEntry(info);
        return trouble is not null ? null : Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .ToDictionary(path => Relative(folder, path), Hash, StringComparer.Ordinal);
    }

    /// <summary>Why the folder may not be loaded, or null.</summary>
    public static PluginTrouble? Trouble(string folder, string name, PluginManifest manifest)
    {
        if (!IsPlainName(name))
        {
            return BadName(name);
        }

        if (manifest.FilesOf(name) is not { } listed)
        {
            return PluginTrouble.Refused(manifest.Words.NotListedCode, manifest.Words.NotListed);
        }

        var info = new DirectoryInfo(folder);
        if (!info.Exists)
        {
            return PluginTrouble.Failed("missing", manifest.Words.FolderGone);
        }

        return UnsafeEntry(info) ?? Contents(folder, listed, manifest.Words);
    }

    private static PluginTrouble? UnsafeEntry(DirectoryInfo folder)
    {
        var everything = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None, IgnoreInaccessible = false };
        return Unsafe(folder) ?? folder.EnumerateFileSystemInfos("*", everything).Select(Unsafe).FirstOrDefault(trouble => trouble is not null);
    }

    private static PluginTrouble? Unsafe(FileSystemInfo entry)
    {
        if (entry.LinkTarget is not null)
        {
            return PluginTrouble.Refused("link", $"{Visible(entry.Name)} is a symbolic link; only plain files and folders are loaded");
        }

        return !OperatingSystem.IsWindows() && (entry.UnixFileMode & UnixFileMode.OtherWrite) != UnixFileMode.None
            ? PluginTrouble.Refused("world-writable", $"{Visible(entry.Name)} may be written by everyone (chmod o-w takes that away)")
            : null;
    }

    private static PluginTrouble? Contents(string folder, IReadOnlyDictionary<string, string> listed, TrustWords words)
    {
        foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            var file = Relative(folder, path);
            if (!listed.TryGetValue(file, out var hash))
            {
                return PluginTrouble.Refused("extra", $"{Visible(file)} {words.Extra}");
            }

            if (!string.Equals(Hash(path), hash, StringComparison.OrdinalIgnoreCase))
            {
                return PluginTrouble.Refused("changed", $"{Visible(file)} {words.Changed}");
            }
        }

        return listed.Keys.FirstOrDefault(file => !File.Exists(Path.Combine(folder, file))) is { } gone
            ? PluginTrouble.Refused("missing", $"{Visible(gone)} {words.Gone}")
            : null;
    }

    private static PluginTrouble BadName(string name) =>
        PluginTrouble.Refused("name", $"'{Visible(name)}' is no plug-in name: a letter, then letters, digits, '.', '_' or '-', 64 at most");

    private static string Relative(string folder, string path) => Path.GetRelativePath(folder, path).Replace('\\', '/');

    private static string Hash(string path)
    {
        using var file = File.OpenRead(path);
        return Convert.ToHexString(SHA256.HashData(file));
    }

    private static bool IsPlainName(string name) =>
        name.Length is > 0 and <= 64
        && char.IsAsciiLetter(name[0])
        && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' or '-')
        && !name.Contains("..", StringComparison.Ordinal);

    /// <summary>Text from outside, fit for one line.</summary>
    internal static string Visible(string text) =>
        new([.. text.Take(200).Select(c => char.IsControl(c) ? '?' : c)]);
}
