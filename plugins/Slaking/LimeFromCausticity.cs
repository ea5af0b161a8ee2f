using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>The lime that must have reacted to give the causticity found.</summary>
public sealed class LimeFromCausticity : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "lime-from-causticity",
        Title = "Lime that reacted, from the causticity reached",
        System = "causticizers",
        Purpose = "What the liquor says about the lime: set it beside the feeders and the slaker's temperature rise. When lime slaked (heat) but did not "
            + "react (causticity), it is free lime, grits or a short retention.",
        Formula = "cao-dose = 0.90478 tta (1 - sulphidity-tta / 100) (causticity - gl-causticity) / 100\n"
            + "tta at the flow's temperature: tta x density(flow-temperature) / density(tta-temperature)",
        Source = "One mole of CaO for one of Na2CO3: computed from IUPAC atomic weights; densities: Laliberte 2009, J. Chem. Eng. Data 54, 1725; "
            + "method uncertainty 0.6 kg/m3: common practice, no source",
        LeavesOut = "Lime that did not react, and the hours between the slaker and the place of the sample: the readings must belong to one liquor.",
        Inputs =
        [
            .. GreenLiquorStrength.Roles,
            new("causticity", "%", "causticity reached", 0, 100),
        ],
        Outputs =
        [
            new("cao-dose", "kg/m3", "CaO that reacted per m3 of green liquor")
            {
                Estimates = "cao-dose",
                MethodU = "0.6",
                WhenOff = "lime was fed and did not react: free lime, unslaked lime in the grits, or a short retention; the readings may be right",
                Moves = ["causticity"],
            },
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (green, reached) = (inputs["gl-causticity"], inputs["causticity"]);
        if (reached < green)
        {
            return Worksheet.Refuse("causticity", $"causticity ({reached:0.##} %) is below gl-causticity ({green:0.##} %): lime only raises it");
        }

        var sheet = new Worksheet();
        var rest = GreenLiquorStrength.WithoutSulphide(sheet, inputs);
        var cao = MolarMass.CaOPerNa2O * rest * (reached - green) / 100;
        sheet.Give("cao-dose", cao, $"cao-dose = {MolarMass.CaOPerNa2O:0.00000} x {rest:0.000} x ({reached:0.##} - {green:0.##}) / 100 = {cao:0.000} kg CaO/m3");
        return sheet.ToValues();
    }
}
