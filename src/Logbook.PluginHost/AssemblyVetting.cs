using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>Reads what an assembly says about itself without running any of it.</summary>
internal static class AssemblyVetting
{
    private static readonly System.Reflection.AssemblyName Contracts = typeof(ICalculation).Assembly.GetName();

    /// <summary>The plug-in's version, and why it may not be loaded (null when it may).</summary>
    public static (string Version, PluginTrouble? Trouble) Read(string assembly)
    {
        if (!File.Exists(assembly))
        {
            return ("", PluginTrouble.Failed("no-assembly", $"{Path.GetFileName(assembly)} is missing: a plug-in's assembly is named like its folder"));
        }

        if (File.Exists(Path.Combine(Path.GetDirectoryName(assembly)!, Contracts.Name + ".dll")))
        {
            return ("", PluginTrouble.Refused("own-contracts", $"it carries its own copy of {Contracts.Name}, so that its types would not be the program's; reference it with Private=\"false\""));
        }

        try
        {
            using var file = new PEReader(File.OpenRead(assembly));
            var metadata = file.GetMetadataReader();
            return (metadata.GetAssemblyDefinition().Version.ToString(3), ContractsTrouble(metadata));
        }
        catch (Exception e) when (e is BadImageFormatException or InvalidOperationException)
        {
            return ("", PluginTrouble.Failed("no-assembly", $"{Path.GetFileName(assembly)} is no .NET assembly"));
        }
    }

    private static PluginTrouble? ContractsTrouble(MetadataReader metadata)
    {
        foreach (var handle in metadata.AssemblyReferences)
        {
            var reference = metadata.GetAssemblyReference(handle);
            if (metadata.StringComparer.Equals(reference.Name, Contracts.Name!))
            {
                return Fits(reference.Version)
                    ? null
                    : PluginTrouble.Refused("contracts-version", $"it was built against {Contracts.Name} {reference.Version.ToString(2)}; this program has {Contracts.Version!.ToString(2)}");
            }
        }

        return PluginTrouble.Refused("no-contracts", $"it does not reference {Contracts.Name}, so that it can offer no calculation");
    }

    /// <summary>Contracts grow only within a major version: what was built against an older minor version still fits.</summary>
    private static bool Fits(Version built) => built.Major == Contracts.Version!.Major && built.Minor <= Contracts.Version.Minor;
}
