using System.Security.Cryptography;

namespace Logbook.PluginHost;

/// <summary>Looks at a plug-in's files before any of them is opened as code.</summary>
internal static class FolderVetting
{
    /// <summary>Why the folder may not be loaded, or null.</summary>
    public static PluginTrouble? Trouble(string folder, string name, PluginManifest manifest)
    {
        if (!IsPlainName(name))
        {
            return PluginTrouble.Refused("name", $"'{Visible(name)}' is no plug-in name: a letter, then letters, digits, '.', '_' or '-', 64 at most");
        }

        if (manifest.FilesOf(name) is not { } listed)
        {
            return PluginTrouble.Refused("not-listed", $"{PluginCatalog.ManifestName} does not list this folder: shipped plug-ins are those that were built with the program");
        }

        var info = new DirectoryInfo(folder);
        if (!info.Exists)
        {
            return PluginTrouble.Failed("missing", "its folder is missing: install the program again");
        }

        return UnsafeEntry(info) ?? Contents(folder, listed);
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

    private static PluginTrouble? Contents(string folder, IReadOnlyDictionary<string, string> listed)
    {
        foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            var file = Path.GetRelativePath(folder, path).Replace('\\', '/');
            if (!listed.TryGetValue(file, out var hash))
            {
                return PluginTrouble.Refused("extra", $"{Visible(file)} is not listed in {PluginCatalog.ManifestName}; a plug-in folder holds the listed files alone");
            }

            if (!string.Equals(Hash(path), hash, StringComparison.OrdinalIgnoreCase))
            {
                return PluginTrouble.Refused("changed", $"{file} is not the file that {PluginCatalog.ManifestName} lists: it changed after the build");
            }
        }

        return listed.Keys.FirstOrDefault(file => !File.Exists(Path.Combine(folder, file))) is { } gone
            ? PluginTrouble.Refused("missing", $"{gone} is listed in {PluginCatalog.ManifestName} but is not there")
            : null;
    }

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
