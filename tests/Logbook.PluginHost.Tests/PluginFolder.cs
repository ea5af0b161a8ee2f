using System.Security.Cryptography;
using System.Text.Json;

namespace Logbook.PluginHost.Tests;

/// <summary>A folder of plug-ins of a test's own: copies of built ones, and a manifest that the test writes itself.</summary>
internal sealed class PluginFolder : IDisposable
{
    public static string Built { get; } = Path.Combine(AppContext.BaseDirectory, "plugins");

    public string Root { get; } = Directory.CreateTempSubdirectory("plugins-").FullName;

    public PluginFolder With(params string[] names)
    {
        foreach (var name in names)
        {
            Directory.CreateDirectory(PathOf(name));
            foreach (var file in Directory.EnumerateFiles(Path.Combine(Built, name)))
            {
                File.Copy(file, PathOf(name, Path.GetFileName(file)));
            }
        }

        return Trusted();
    }

    /// <summary>Lists everything that lies there now.</summary>
    public PluginFolder Trusted()
    {
        var files = Directory.EnumerateFiles(Root, "*", SearchOption.AllDirectories)
            .Select(path => (Name: Path.GetRelativePath(Root, path).Replace('\\', '/'), Path: path))
            .Where(f => f.Name.Contains('/', StringComparison.Ordinal))
            .ToDictionary(f => f.Name, f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f.Path))), StringComparer.Ordinal);
        File.WriteAllText(Path.Combine(Root, "manifest.json"), JsonSerializer.Serialize(files));
        return this;
    }

    public string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    public IReadOnlyList<PluginReport> Load() => PluginCatalog.LoadShipped(Root);

    /// <summary>The report of the only plug-in here.</summary>
    public PluginReport LoadOne() => Assert.Single(Load());

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
