using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>What became of one plug-in folder.</summary>
/// <param name="State">loaded, refused or failed.</param>
/// <param name="Code">Stable, for machines; empty when loaded.</param>
/// <param name="Text">One plain sentence; empty when loaded.</param>
public sealed record PluginReport(string Name, string Version, string State, string Code, string Text, IReadOnlyList<ICalculation> Calculations);

/// <summary>Finds, vets and loads plug-ins. Trusts nothing that it has not hashed.</summary>
public static class PluginCatalog
{
    /// <summary>The plug-ins shipped beside the program, trusted by the manifest made at build.</summary>
    public static IReadOnlyList<PluginReport> LoadShipped(string folder) => throw new NotImplementedException();
}
