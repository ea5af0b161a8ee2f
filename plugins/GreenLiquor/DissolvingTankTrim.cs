using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.GreenLiquor;

/// <summary>How much weak wash would bring the green liquor to its target strength.</summary>
public sealed class DissolvingTankTrim : ICalculation
{
    /// <summary>Density per strength of green liquor near 120 g/L at 90 degC, kg/m3 for one g/L.</summary>
    private const double DensityPerStrength = 1.29;

    public CalculationInfo Info { get; } = new()
    {
        Id = "dissolving-tank-trim",
        Title = "Weak wash that would bring green liquor to its target",
        System = "weak-wash",
        Purpose = "A balance of soda over the dissolving tank: what more or less weak wash the target asks for, and by how much the density would move. "
            + "A figure to compare with what the controls do, no set point.",
        Formula = "weak-wash-change = flow (tta - target-tta) / (target-tta - weak-wash-tta)\ndensity-change = 1.29 (target-tta - tta)",
        Source = "Soda balance, volumes added (within 0.3 %); slope of density from Laliberte 2009, J. Chem. Eng. Data 54, 1725",
        LeavesOut = "The smelt's flow, which is taken as unchanged, the tank's own hold-up, and limits of the tank and its pumps.",
        Inputs =
        [
            new("tta", "g/L Na2O", "total titratable alkali of the green liquor", 1, 250),
            new("target-tta", "g/L Na2O", "strength aimed at", 1, 250),
            new("weak-wash-tta", "g/L Na2O", "total titratable alkali of the weak wash", 0, 200),
            new("flow", "m3/h", "green liquor from the dissolving tank", 0, 5000),
        ],
        Outputs =
        [
            new("weak-wash-change", "m3/h", "weak wash to add; below zero, to take away"),
            new("density-change", "kg/m3", "change of the green liquor's density that goes with it"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (tta, target, weak, flow) = (inputs["tta"], inputs["target-tta"], inputs["weak-wash-tta"], inputs["flow"]);
        if (weak >= target)
        {
            return Worksheet.Refuse("weak-wash-tta", $"weak-wash-tta ({weak:0.##} g/L) is not below target-tta ({target:0.##} g/L): no amount of it gets there");
        }

        if (weak >= tta)
        {
            return Worksheet.Refuse("tta", $"tta ({tta:0.##} g/L) is not above weak-wash-tta ({weak:0.##} g/L): the two may be swapped");
        }

        var sheet = new Worksheet();
        var change = flow * (tta - target) / (target - weak);
        sheet.Give("weak-wash-change", change, $"weak-wash-change = {flow:0.##} x ({tta:0.00} - {target:0.00}) / ({target:0.00} - {weak:0.00}) = {change:0.00} m3/h");
        sheet.Give("density-change", DensityPerStrength * (target - tta), $"density-change = {DensityPerStrength} x ({target:0.00} - {tta:0.00}) = {DensityPerStrength * (target - tta):0.0} kg/m3");
        return sheet.ToValues();
    }
}
