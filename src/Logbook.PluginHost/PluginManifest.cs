using System.Text.Json;

namespace Logbook.PluginHost;

/// <summary>
/// Which files may lie in which plug-in folder, and their SHA-256: one flat JSON object of <c>"Folder/file": "hex"</c>,
/// written by the build (src/PluginOutput.targets); or what a site's engineer trusted.
/// </summary>
/// <param name="wording">How its refusals speak of it.</param>
internal sealed class PluginManifest(TrustWords wording)
{
    private readonly Dictionary<string, Dictionary<string, string>> _folders = new(StringComparer.Ordinal);

    public TrustWords Words => wording;

    public IEnumerable<string> Folders => _folders.Keys;

    /// <summary>File name inside the folder to hash; null when the folder is not listed.</summary>
    public IReadOnlyDictionary<string, string>? FilesOf(string folder) => _folders.GetValueOrDefault(folder);

    /// <summary>Plug-in name to its files and their hashes.</summary>
    public static PluginManifest Of(IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> trusted)
    {
        var manifest = new PluginManifest(TrustWords.Site);
        foreach (var (name, files) in trusted)
        {
            manifest._folders[name] = new Dictionary<string, string>(files, StringComparer.Ordinal);
        }

        return manifest;
    }

    /// <summary>Null, with the reason, when the file cannot serve.</summary>
    public static PluginManifest? Read(string path, out PluginTrouble? trouble)
    {
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(path));
            trouble = null;
            return Of(json.RootElement);
        }
        catch (IOException refused)
        {
            trouble = Unread(path, refused);
        }
        catch (UnauthorizedAccessException refused)
        {
            trouble = Unread(path, refused);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            trouble = PluginTrouble.Refused("bad-manifest", $"{path} is damaged, so that no plug-in can be vetted; it should be one object of \"Folder/file\": \"sha256\"");
        }

        return null;
    }

    private static PluginTrouble Unread(string path, SystemException refused) =>
        PluginTrouble.Refused("no-manifest", $"{path} cannot be read, so that no plug-in can be vetted: {refused.Message}");

    private static PluginManifest Of(JsonElement root)
    {
        var manifest = new PluginManifest(TrustWords.Build);
        foreach (var entry in root.EnumerateObject())
        {
            var slash = entry.Name.IndexOf('/', StringComparison.Ordinal);
            var folder = slash < 0 ? "" : entry.Name[..slash];
            if (!manifest._folders.TryGetValue(folder, out var files))
            {
                manifest._folders.Add(folder, files = new(StringComparer.Ordinal));
            }

            files[entry.Name[(slash + 1)..]] = entry.Value.GetString() ?? "";
        }

        return manifest;
    }
}

/// <summary>Why a file may not be loaded, in the words of who trusts: the build or the site.</summary>
/// <param name="NotListed">The folder is unknown. The others follow the file's name.</param>
internal sealed record TrustWords(string NotListedCode, string NotListed, string Extra, string Changed, string Gone, string FolderGone)
{
    public static readonly TrustWords Build = new(
        "not-listed",
        $"{PluginCatalog.ManifestName} does not list this folder: shipped plug-ins are those that were built with the program",
        $"is not listed in {PluginCatalog.ManifestName}; a plug-in folder holds the listed files alone",
        $"is not the file that {PluginCatalog.ManifestName} lists: it changed after the build",
        $"is listed in {PluginCatalog.ManifestName} but is not there",
        "its folder is missing: install the program again");

    public static readonly TrustWords Site = new(
        "not-trusted",
        "nobody trusted it here. A plug-in is code with the program's rights; when you know whose it is, an engineer trusts it: logbook plugins trust NAME --why TEXT --by CODE",
        "was not there when the plug-in was trusted; look at it, then trust the plug-in anew",
        "is not the file that was trusted: it changed since; look at it, then trust the plug-in anew",
        "was trusted but is not there",
        "it was trusted, but its folder is gone");
}
