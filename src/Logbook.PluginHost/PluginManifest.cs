using System.Text.Json;

namespace Logbook.PluginHost;

/// <summary>
/// Which files may lie in which plug-in folder, and their SHA-256: one flat JSON object of <c>"Folder/file": "hex"</c>,
/// written by the build (src/PluginOutput.targets).
/// </summary>
internal sealed class PluginManifest
{
    private readonly Dictionary<string, Dictionary<string, string>> _folders = new(StringComparer.Ordinal);

    public IEnumerable<string> Folders => _folders.Keys;

    /// <summary>File name inside the folder to hash; null when the folder is not listed.</summary>
    public IReadOnlyDictionary<string, string>? FilesOf(string folder) => _folders.GetValueOrDefault(folder);

    /// <summary>Null, with the reason, when the file cannot serve.</summary>
    public static PluginManifest? Read(string path, out PluginTrouble? trouble)
    {
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(path));
            trouble = null;
            return Of(json.RootElement);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            trouble = PluginTrouble.Refused("no-manifest", $"{path} cannot be read, so that no plug-in can be vetted: {e.Message}");
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            trouble = PluginTrouble.Refused("bad-manifest", $"{path} is damaged, so that no plug-in can be vetted; it should be one object of \"Folder/file\": \"sha256\"");
        }

        return null;
    }

    private static PluginManifest Of(JsonElement root)
    {
        var manifest = new PluginManifest();
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
