using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.LimeMud;

/// <summary>Solids of the lime mud from its density.</summary>
public sealed class MudSolids : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "mud-solids",
        Title = "Solids of the lime mud from density",
        System = "lime-mud-tank",
        Purpose = "The mud filter works best at a steady 25 to 35 % solids. The density tells it between laboratory samples.",
        Formula = Slurry.Formula + "\nsolids = 100 share\nsolids-per-litre = density share",
        Source = Slurry.Source + "; band 25 to 35 %: common practice, no source",
        LeavesOut = "Air in the slurry, grits and dregs of another density, and dissolved salts beyond the liquor's density.",
        Inputs = Slurry.Roles,
        Outputs =
        [
            new("solids", "%", "dry solids by mass"),
            new("solids-per-litre", "g/L", "dry solids per litre of slurry"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var sheet = new Worksheet();
        if (Slurry.Share(sheet, inputs, out var share) is { } refused)
        {
            return refused;
        }

        sheet.Give("solids", 100 * share, $"solids = 100 x {share:0.00000} = {100 * share:0.00} %");
        sheet.Give("solids-per-litre", inputs["density"] * share, $"solids-per-litre = {inputs["density"]:0.0} x {share:0.00000} = {inputs["density"] * share:0.0} g/L");
        return sheet.ToValues();
    }
}
