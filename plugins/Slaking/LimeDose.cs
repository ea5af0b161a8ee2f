using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>The lime that a target causticity asks for.</summary>
public sealed class LimeDose : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "lime-dose",
        Title = "Lime that the target causticity asks for",
        System = "slaker",
        Purpose = "One mole of lime for each mole of carbonate to be turned. The liming ratio is the available lime over all the carbonate: what goes "
            + "beyond the equilibrium stays as free lime and spoils the mud's settling. A figure to compare with, no set point.",
        Formula = "cao-needed = 0.90478 tta (1 - sulphidity-tta / 100) (target-causticity - gl-causticity) / 100\n"
            + "lime-needed = 100 cao-needed / available-cao\nlime-feed = flow lime-needed / 1000\n"
            + "liming-ratio = (target-causticity - gl-causticity) / (100 - gl-causticity)\n"
            + "tta at the flow's temperature: tta x density(flow-temperature) / density(tta-temperature)",
        Source = "One mole of CaO for one of Na2CO3: computed from IUPAC atomic weights; densities: Laliberte 2009, J. Chem. Eng. Data 54, 1725",
        LeavesOut = "Lime that leaves unreacted as grits or free lime, and the equilibrium: a target above it cannot be reached with any dose.",
        Inputs =
        [
            .. GreenLiquorStrength.Roles,
            new("target-causticity", "%", "causticity aimed at", 1, 100),
            new("available-cao", "%", "available CaO of the lime", 1, 100),
            new("flow", "m3/h", "green liquor to the slaker", 0, 5000) { Required = false },
        ],
        Outputs =
        [
            new("cao-needed", "kg/m3", "CaO per m3 of green liquor"),
            new("lime-needed", "kg/m3", "lime as it is, per m3 of green liquor"),
            new("lime-feed", "t/h", "lime as it is"),
            new("liming-ratio", "1", "moles of available CaO per mole of carbonate"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (green, target, available) = (inputs["gl-causticity"], inputs["target-causticity"], inputs["available-cao"]);
        if (target <= green)
        {
            return Worksheet.Refuse("target-causticity", $"target-causticity ({target:0.##} %) is not above gl-causticity ({green:0.##} %): lime only raises it");
        }

        var sheet = new Worksheet();
        var rest = GreenLiquorStrength.WithoutSulphide(sheet, inputs);
        var cao = MolarMass.CaOPerNa2O * rest * (target - green) / 100;
        var lime = 100 * cao / available;
        var ratio = (target - green) / (100 - green);
        sheet.Give("cao-needed", cao, $"cao-needed = {MolarMass.CaOPerNa2O:0.00000} x {rest:0.000} x ({target:0.##} - {green:0.##}) / 100 = {cao:0.000} kg/m3");
        sheet.Give("lime-needed", lime, $"lime-needed = 100 x {cao:0.000} / {available:0.##} = {lime:0.000} kg/m3");
        if (inputs.Find("flow") is { } flow)
        {
            sheet.Give("lime-feed", flow * lime / 1000, $"lime-feed = {flow:0.##} x {lime:0.000} / 1000 = {flow * lime / 1000:0.000} t/h");
        }

        sheet.Give("liming-ratio", ratio, $"liming-ratio = ({target:0.##} - {green:0.##}) / (100 - {green:0.##}) = {ratio:0.0000}");
        if (ratio > 0.9)
        {
            sheet.Note($"A liming ratio of {ratio:0.00} is more than liquor of usual strength takes up at equilibrium: the last of it is likely to stay as free lime; weak green liquor can take more.");
        }

        return sheet.ToValues();
    }
}
