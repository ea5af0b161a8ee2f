using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Laboratory;

/// <summary>Strength of the titration acid against pure soda ash.</summary>
public sealed class AcidStrength : ICalculation
{
    private static readonly double[] UsualStrengths = [0.1, 0.2, 0.5, 1.0];

    public CalculationInfo Info { get; } = new()
    {
        Id = "acid-strength",
        Title = "Strength of the acid against soda ash",
        System = "laboratory",
        Purpose = "Every alkali figure hangs on the acid. A wrong strength moves EA, AA and TTA of all liquors by the same share, while causticity and "
            + "sulphidity stay, which is how it shows.",
        Formula = "acid = 1000 soda-ash / (52.99377 acid-volume)",
        Source = "Two moles of acid for one of sodium carbonate: computed from IUPAC atomic weights",
        LeavesOut = "Water in soda ash that was not dried, and the indicator's own error.",
        Inputs =
        [
            new("soda-ash", "g", "pure, dried sodium carbonate weighed in", 0.001, 100),
            new("acid-volume", "mL", "acid taken to the end point", 0.1, 1000),
        ],
        Outputs = [new("acid", "mol/L", "strength of the acid")],
    };

    public Outcome Run(Inputs inputs)
    {
        var (mass, volume) = (inputs["soda-ash"], inputs["acid-volume"]);
        var acid = 1000 * mass / (MolarMass.Na2CO3 / 2 * volume);
        var sheet = new Worksheet();
        sheet.Give("acid", acid, $"acid = 1000 x {mass:0.0000} / ({MolarMass.Na2CO3 / 2:0.00000} x {volume:0.00}) = {acid:0.00000} mol/L");

        var usual = UsualStrengths.MinBy(u => Math.Abs(Math.Log(acid / u)));
        var off = 100 * ((acid / usual) - 1);
        if (Math.Abs(off) is > 0.5 and < 20)
        {
            sheet.Note($"{off:+0.0;-0.0} % from {usual:0.0} mol/L: acid made up so, or aged; else soda ash that was damp, or an end point read off. Figures made with {usual:0.0} would be as much off.");
        }

        return sheet.ToValues();
    }
}
