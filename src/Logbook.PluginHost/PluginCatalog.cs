namespace Logbook.PluginHost;

/// <summary>Finds, vets and loads plug-ins. Trusts nothing that it has not hashed.</summary>
public static class PluginCatalog
{
    /// <summary>The list of files, made at build, that the shipped plug-ins must match.</summary>
    internal const string ManifestName = "manifest.json";

    /// <summary>
    /// The plug-ins shipped beside the program, trusted by the manifest made at build: one report for each folder that is
    /// there or should be, in order of name.
    /// </summary>
    public static IReadOnlyList<PluginReport> LoadShipped(string folder)
    {
        var root = Path.GetFullPath(folder); // the loader wants absolute paths
        if (!Directory.Exists(root))
        {
            return [Whole(root, PluginTrouble.Failed("no-folder", $"there is no folder {root}: the program is not completely installed"))];
        }

        var manifest = PluginManifest.Read(Path.Combine(root, ManifestName), out var trouble);
        if (manifest is null)
        {
            return [Whole(root, trouble!)];
        }

        return LoadAll(root, manifest, []);
    }

    /// <summary>
    /// A site's own plug-ins, trusted by its journal: one report for each folder that is there or was trusted, in order of
    /// name. An id that one of <paramref name="shipped"/> offers is refused.
    /// </summary>
    /// <param name="folder">The site's <c>plugins/</c>; nothing is loaded when it is not there.</param>
    /// <param name="trusted">Plug-in name to its files and their SHA-256.</param>
    public static IReadOnlyList<PluginReport> LoadFrom(
        string folder, IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> trusted, IReadOnlyList<PluginReport> shipped)
    {
        var root = Path.GetFullPath(folder);
        return Directory.Exists(root) || trusted.Count > 0 ? LoadAll(root, PluginManifest.Of(trusted), shipped) : [];
    }

    /// <summary>The files of a plug-in's folder with their hashes, for an engineer to trust; nothing of it is run.</summary>
    /// <param name="why">One sentence, when it cannot be trusted: no such folder, a link, a file that everyone may write, no plug-in for this program.</param>
    public static IReadOnlyDictionary<string, string>? FilesOf(string folder, string name, out string why)
    {
        var own = Path.Combine(Path.GetFullPath(folder), name);
        var files = FolderVetting.Hashes(own, name, out var trouble);
        trouble ??= AssemblyVetting.Read(Path.Combine(own, name + ".dll")).Trouble;
        why = trouble?.Text ?? "";
        return trouble is null ? files : null;
    }

    private static List<PluginReport> LoadAll(string root, PluginManifest manifest, IReadOnlyList<PluginReport> before)
    {
        var there = Directory.Exists(root) ? Directory.EnumerateDirectories(root).Select(path => Path.GetFileName(path)) : [];
        var names = there.Union(manifest.Folders, StringComparer.Ordinal).Order(StringComparer.Ordinal);
        Task<PluginReport>[] loads = [.. names.Select(name => Task.Run(() => Load(root, name, manifest)))]; // side by side: whoever opens the screen waits for them
        var reports = new List<PluginReport>();
        foreach (var load in loads)
        {
            reports.Add(WithoutClash(load.GetAwaiter().GetResult(), [.. before, .. reports]));
        }

        return reports;
    }

    private static PluginReport Load(string root, string name, PluginManifest manifest)
    {
        var folder = Path.Combine(root, name);
        if (FolderVetting.Trouble(folder, name, manifest) is { } untrusted)
        {
            return PluginReport.Of(untrusted, name);
        }

        var assembly = Path.Combine(folder, name + ".dll");
        var about = AssemblyVetting.Read(assembly);
        return about.Trouble is null
            ? PluginLoading.Load(assembly, name, about.Version)
            : PluginReport.Of(about.Trouble, name, about.Version);
    }

    /// <summary>Ids are what a site's files name: two plug-ins may not offer one. The first by name keeps it.</summary>
    private static PluginReport WithoutClash(PluginReport report, List<PluginReport> before)
    {
        foreach (var calculation in report.Calculations)
        {
            var id = calculation.Info.Id;
            var other = before.Find(b => b.Calculations.Any(c => string.Equals(c.Info.Id, id, StringComparison.Ordinal)));
            if (other is not null)
            {
                return PluginReport.Of(
                    PluginTrouble.Refused("id-clash", $"it offers the calculation {id}, which {other.Name} already does; an id belongs to one plug-in"),
                    report.Name, report.Version);
            }
        }

        return report;
    }

    private static PluginReport Whole(string root, PluginTrouble trouble) => PluginReport.Of(trouble, Path.GetFileName(root));
}
