using Logbook.Contracts;

namespace Logbook.PluginHost;

/// <summary>What became of one plug-in folder.</summary>
/// <param name="State">loaded, refused or failed.</param>
/// <param name="Code">Stable, for machines; empty when loaded.</param>
/// <param name="Text">One plain sentence; empty when loaded.</param>
public sealed record PluginReport(string Name, string Version, string State, string Code, string Text, IReadOnlyList<ICalculation> Calculations)
{
    internal bool Loaded => Code.Length == 0;

    internal static PluginReport Of(PluginTrouble trouble, string name, string version = "") =>
        new(name, version, trouble.State, trouble.Code, trouble.Text, []);
}

/// <summary>Why a plug-in is not used.</summary>
/// <param name="State">refused: its files may not be loaded; failed: they may, and it does not work.</param>
internal sealed record PluginTrouble(string State, string Code, string Text)
{
    public static PluginTrouble Refused(string code, string text) => new("refused", code, text);

    public static PluginTrouble Failed(string code, string text) => new("failed", code, text);
}
