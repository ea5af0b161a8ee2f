using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.WeakWash;

/// <summary>Strength of weak wash from its density.</summary>
public sealed class WeakWashDensity : ICalculation
{
    private const double UsualSulphidity = 0.25;
    private const double UsualCausticity = 0.80;

    public CalculationInfo Info { get; } = new()
    {
        Id = "weak-wash-density",
        Title = "Weak wash strength from density",
        System = "weak-wash",
        Purpose = "Weak wash dilutes the smelt, so its strength moves the dissolving tank. Rising strength says that the mud is washed less well.",
        Formula = StrengthByDensity.Formula,
        Source = "Laliberte 2009, J. Chem. Eng. Data 54, 1725 (sulphide as NaOH and NaHS); method uncertainty 0.4 g/L: common practice, no source",
        LeavesOut = "Other salts (the offset) and mud in the wash; sulphidity is taken as 25 % of TTA and causticity as 80 %.",
        Inputs = [.. StrengthByDensity.Roles(950, 1150), StrengthByDensity.Offset],
        Outputs = StrengthByDensity.Outputs("ww-tta", "0.4"),
    };

    public Outcome Run(Inputs inputs)
    {
        var sheet = new Worksheet();
        if (StrengthByDensity.Give(sheet, inputs, UsualSulphidity, UsualCausticity, out var laboratory) is { } refused)
        {
            return refused;
        }

        if (laboratory > 40)
        {
            sheet.Note($"{laboratory:0.0} g/L is strong for weak wash (usually 10 to 25 g/L): white liquor carried over with the mud or a wash that failed; or solids in the density cell.");
        }

        return sheet.ToValues();
    }
}
