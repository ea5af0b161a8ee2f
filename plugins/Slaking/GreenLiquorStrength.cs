using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>The roles that say how strong the green liquor is, and its carbonate on the flow meter's litre.</summary>
internal static class GreenLiquorStrength
{
    public static IReadOnlyList<InputInfo> Roles { get; } =
    [
        new("tta", "g/L Na2O", "total titratable alkali of the green liquor", 1, 250),
        new("tta-temperature", "degC", "temperature to which tta belongs, 25 for a laboratory figure", 10, 110) { Required = false },
        new("flow-temperature", "degC", "temperature of the green liquor at the flow meter", 10, 110) { Required = false },
        new("sulphidity-tta", "%", "sulphide of the total titratable alkali", 0, 95),
        new("gl-causticity", "%", "causticity of the green liquor", 0, 95),
    ];

    /// <summary>What is left when the formula is written down: the carbonate and hydroxide, g/L Na2O, at the flow meter.</summary>
    public static double WithoutSulphide(Worksheet sheet, Inputs inputs)
    {
        var (tta, sulphidity) = (AtFlow(sheet, inputs), inputs["sulphidity-tta"]);
        var rest = tta * (1 - (sulphidity / 100));
        sheet.Step($"tta without sulphide = {tta:0.000} x (1 - {sulphidity:0.##} / 100) = {rest:0.000} g/L Na2O");
        return rest;
    }

    private static double AtFlow(Worksheet sheet, Inputs inputs)
    {
        var tta = inputs["tta"];
        if (inputs.Find("tta-temperature") is not { } from || inputs.Find("flow-temperature") is not { } to)
        {
            sheet.Step($"tta = {tta:0.000} g/L Na2O, taken as it is at the flow's temperature");
            if (inputs.Has("tta-temperature") || inputs.Has("flow-temperature"))
            {
                sheet.Note($"The strength was not brought to the flow's temperature: that needs both tta-temperature and flow-temperature. A laboratory figure is 3 to 4 % too strong for a hot flow.");
            }

            return tta;
        }

        var liquor = Liquor.Of(tta, inputs["sulphidity-tta"] / 100, inputs["gl-causticity"] / 100, from);
        var hot = liquor.Tta(to);
        sheet.Step($"tta at {to:0.#} degC = {tta:0.000} x {liquor.Density(to):0.0} / {liquor.Density(from):0.0} = {hot:0.000} g/L Na2O (given at {from:0.#} degC)");
        return hot;
    }
}
