using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.LimeMud;

/// <summary>Solids of a slurry from its density.</summary>
internal static class Slurry
{
    public static IReadOnlyList<InputInfo> Roles { get; } =
    [
        new("density", "kg/m3", "of the slurry", 900, 2700),
        new("liquor-density", "kg/m3", "of the liquor in it", 900, 1300) { Default = 980 },
        new("solid-density", "kg/m3", "of the dry solids", 1500, 4000) { Default = 2710 },
    ];

    public const string Formula =
        "share = solid-density (density - liquor-density) / (density (solid-density - liquor-density))";

    public const string Source =
        "Volumes of solids and liquor add; calcite 2710 kg/m3 from memory of the handbooks";

    /// <summary>Mass share of solids, 0 to 1, or why there is none.</summary>
    public static Refused? Share(Worksheet sheet, Inputs inputs, out double share)
    {
        var (density, liquor, solid) = (inputs["density"], inputs["liquor-density"], inputs["solid-density"]);
        share = solid * (density - liquor) / (density * (solid - liquor));
        if (share is < 0 or > 1)
        {
            return Worksheet.Refuse("density", $"density ({density:0.0} kg/m3) must lie between liquor-density ({liquor:0.0}) and solid-density ({solid:0.0} kg/m3)");
        }

        sheet.Step($"share = {solid:0.#} x ({density:0.0} - {liquor:0.0}) / ({density:0.0} x ({solid:0.#} - {liquor:0.0})) = {share:0.00000}");
        return null;
    }
}
