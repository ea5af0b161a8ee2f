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

        var names = Directory.EnumerateDirectories(root).Select(path => Path.GetFileName(path)).Union(manifest.Folders, StringComparer.Ordinal);
        var reports = new List<PluginReport>();
        foreach (var name in names.Order(StringComparer.Ordinal))
        {
            reports.Add(WithoutClash(Load(root, name, manifest), reports));
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
