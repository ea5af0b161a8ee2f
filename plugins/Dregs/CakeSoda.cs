using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Dregs;

/// <summary>Soda that leaves with the liquor in a cake.</summary>
public sealed class CakeSoda : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "cake-soda",
        Title = "Soda in a cake, and the loss with it",
        System = "dregs",
        Purpose = "A wet cake carries liquor, and soda with it. Serves the dregs cake and the lime mud cake: much soda is lost chemical and makes rings in "
            + "the kiln, a sudden rise says that washing or draining fails.",
        Formula = "soda = 100 (100 - dry-solids) / dry-solids liquor-tta / liquor-density\nloss = 10 cake-rate soda",
        Source = "Mass balance; washable soda of mud below 0.1 to 0.2 % Na2O: common practice, no source",
        LeavesOut = "Soda bound in the solids, which no washing takes: 0.2 to 0.6 % Na2O of dry mud in all (from memory).",
        Inputs =
        [
            new("dry-solids", "%", "dry part of the cake", 0, 100),
            new("liquor-tta", "g/L Na2O", "total titratable alkali of the liquor in the cake", 0, 200),
            new("liquor-density", "kg/m3", "of that liquor", 900, 1300) { Default = 1000 },
            new("cake-rate", "t/h", "cake, dry", 0, 500) { Required = false },
        ],
        Outputs =
        [
            new("soda", "% Na2O", "soluble soda on dry solids"),
            new("loss", "kg/h Na2O", "soluble soda that leaves with the cake"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (solids, tta, density) = (inputs["dry-solids"], inputs["liquor-tta"], inputs["liquor-density"]);
        if (solids <= 0)
        {
            return Worksheet.Refuse("dry-solids", $"dry-solids is {solids:0.#} %: a cake has more than 0 and at most 100 %");
        }

        var sheet = new Worksheet();
        var soda = 100 * (100 - solids) / solids * tta / density;
        sheet.Give("soda", soda, $"soda = 100 x (100 - {solids:0.##}) / {solids:0.##} x {tta:0.###} / {density:0.#} = {soda:0.0000} % Na2O on dry");
        if (inputs.Find("cake-rate") is { } rate)
        {
            sheet.Give("loss", 10 * rate * soda, $"loss = 10 x {rate:0.###} x {soda:0.0000} = {10 * rate * soda:0.00} kg/h Na2O");
        }

        return sheet.ToValues();
    }
}
