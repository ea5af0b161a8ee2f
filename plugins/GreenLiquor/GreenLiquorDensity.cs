using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.GreenLiquor;

/// <summary>Strength of green liquor from its density.</summary>
public sealed class GreenLiquorDensity : ICalculation
{
    private const double UsualCausticity = 0.15;

    public CalculationInfo Info { get; } = new()
    {
        Id = "green-liquor-density",
        Title = "Green liquor strength from density",
        System = "raw-green-liquor",
        Purpose = "The density meter gives the strength between titrations. One g/L is about 1.3 kg/m3, and so are 2 K: without its temperature a density "
            + "says nothing. Mill liquor is 5 to 15 kg/m3 heavier than the pure one; fit the offset once against titrations.",
        Formula = StrengthByDensity.Formula,
        Source = "Laliberte 2009, J. Chem. Eng. Data 54, 1725 (sulphide as NaOH and NaHS); method uncertainty 1.2 g/L: common practice, no source",
        LeavesOut = "Sulphate, chloride, thiosulphate and potassium (the offset), dregs in the liquor, and the causticity, taken as 15 %.",
        Inputs =
        [
            .. StrengthByDensity.Roles(950, 1300),
            new("sulphidity-tta", "%", "sulphide of the total titratable alkali", 0, 95) { Default = 25 },
            StrengthByDensity.Offset,
        ],
        Outputs = StrengthByDensity.Outputs("gl-tta", "1.2"),
    };

    public Outcome Run(Inputs inputs)
    {
        var sheet = new Worksheet();
        if (StrengthByDensity.Give(sheet, inputs, inputs["sulphidity-tta"] / 100, UsualCausticity, out var laboratory) is { } refused)
        {
            return refused;
        }

        if (laboratory is < 90 or > 150)
        {
            sheet.Note($"{laboratory:0} g/L is far from usual green liquor (110 to 130 g/L at 25 degC): a real swing at the dissolving tank, or a density cell that is scaled, holds gas or has lost its temperature.");
        }

        return sheet.ToValues();
    }
}
