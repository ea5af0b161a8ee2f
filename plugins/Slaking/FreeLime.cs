using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>Lime beyond what the equilibrium lets react.</summary>
public sealed class FreeLime : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "free-lime",
        Title = "Free lime left in the mud",
        System = "causticizers",
        Purpose = "What is dosed beyond the equilibrium stays as calcium hydroxide in the mud, which then settles and filters badly, sharply so once the "
            + "threshold is passed. Over-liming below zero is the room that is left.",
        Formula = "limit = 0.90478 na2co3 equilibrium-conversion / 100\nfree-calcium-hydroxide = 1.32125 (cao-dose - limit), not below 0\n"
            + "over-liming = 100 (cao-dose - limit) / limit\n"
            + "liming-ratio = cao-dose / (0.90478 na2co3)",
        Source = "Stoichiometry computed from IUPAC atomic weights; effect of the liming ratio on settling: from memory of TAPPI PEERS 2010 papers",
        LeavesOut = "Time: it is the end of the reaction, before which more is free. The equilibrium itself is known within about two points.",
        Inputs =
        [
            new("cao-dose", "kg/m3", "available CaO fed per m3 of green liquor", 0, 200),
            new("na2co3", "g/L Na2O", "carbonate of the green liquor, at the flow's temperature", 1, 200),
            new("equilibrium-conversion", "%", "share of that carbonate that can turn", 1, 100),
        ],
        Outputs =
        [
            new("free-calcium-hydroxide", "kg/m3", "calcium hydroxide left per m3 of green liquor"),
            new("over-liming", "%", "dose beyond the equilibrium; below zero, the room left"),
            new("liming-ratio", "1", "moles of available CaO fed per mole of carbonate"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (dose, carbonate, conversion) = (inputs["cao-dose"], inputs["na2co3"], inputs["equilibrium-conversion"]);
        var limit = MolarMass.CaOPerNa2O * carbonate * conversion / 100;
        var free = MolarMass.CalciumHydroxidePerCaO * Math.Max(0, dose - limit);
        var over = 100 * (dose - limit) / limit;

        var sheet = new Worksheet();
        sheet.Step($"limit = {MolarMass.CaOPerNa2O:0.00000} x {carbonate:0.###} x {conversion:0.##} / 100 = {limit:0.000} kg CaO/m3");
        sheet.Give("free-calcium-hydroxide", free, $"free = {MolarMass.CalciumHydroxidePerCaO:0.00000} x ({dose:0.000} - {limit:0.000}), not below 0 = {free:0.000} kg/m3");
        sheet.Give("over-liming", over, $"over-liming = 100 x ({dose:0.000} - {limit:0.000}) / {limit:0.000} = {over:0.0} %");
        sheet.Give("liming-ratio", dose / (MolarMass.CaOPerNa2O * carbonate),
            $"liming-ratio = {dose:0.000} / ({MolarMass.CaOPerNa2O:0.00000} x {carbonate:0.###}) = {dose / (MolarMass.CaOPerNa2O * carbonate):0.0000}");
        if (over > 0)
        {
            sheet.Note($"Over-limed by {over:0.0} %: expect slower settling, wetter mud and no more causticity for the extra lime; or the equilibrium of this mill lies higher than entered.");
        }
        else if (over > -2)
        {
            sheet.Note($"Only {-over:0.0} % of room to the equilibrium: a small surge of lime or weaker green liquor would leave free lime.");
        }

        return sheet.ToValues();
    }
}
