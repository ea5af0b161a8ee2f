using System.Globalization;
using Logbook.Contracts;

namespace Example;

/// <summary>Wash water for each kilogram of dry dregs: the worked example of DEVELOPERS.md.</summary>
public sealed class WashRatio : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "wash-ratio",
        Title = "Wash water per dry dregs",
        System = "dregs",
        Purpose = "Too little wash loses soda with the dregs, too much only dilutes the weak wash. Usually 1 to 4 kg of water for a kg of dry dregs.",
        Formula = "ratio = 1000 wash / dregs",
        Source = "Mass balance, a cubic metre of wash water taken as 1000 kg; usual band 1 to 4: common practice, no source",
        LeavesOut = "How well the water is spread over the cake.",
        Inputs =
        [
            new("wash", "m3/h", "wash water to the centrifuge", 0, 100),
            new("dregs", "kg/h", "dry dregs", 0, 20_000),
        ],
        Outputs = [new("ratio", "1", "kg of wash water per kg of dry dregs")],
    };

    public Outcome Run(Inputs inputs)
    {
        var (wash, dregs) = (inputs["wash"], inputs["dregs"]);
        if (dregs <= 0)
        {
            return new Refused("dregs", "dregs is 0 kg/h: a ratio needs some dregs");
        }

        var ratio = 1000 * wash / dregs;
        return new Values(new Dictionary<string, double>(StringComparer.Ordinal) { ["ratio"] = ratio })
        {
            Steps = [string.Create(CultureInfo.InvariantCulture, $"ratio = 1000 x {wash:0.##} / {dregs:0.#} = {ratio:0.00}")],
            Notes = ratio < 1
                ? ["Less than 1 kg of water per kg of dregs: soda is likely to be lost with the cake; or the dregs are counted too high."]
                : [],
        };
    }
}
