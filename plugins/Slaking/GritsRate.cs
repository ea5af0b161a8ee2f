using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>What the classifier rakes out, against the lime fed.</summary>
public sealed class GritsRate : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "grits-rate",
        Title = "Grits raked out, and their share of the lime",
        System = "classifier",
        Purpose = "Grits are what did not slake: hard-burnt cores, unburnt carbonate, sand, refractory. Their share of the lime is a cheap "
            + "measure of the lime's quality and of the slaker's work.",
        Formula = "rate = grits dry-solids / 100 / period\nshare = 100 rate / (1000 lime)",
        Source = "Mass balance; usual share 0.5 to 2 %, high above 3 %: common practice, no source",
        LeavesOut = "The grits that a boiling slaker or a fast classifier carries on into the mud, and the liquor's own dissolved solids in wet grits.",
        Inputs =
        [
            new("grits", "kg", "grits weighed, wet", 0, 100_000),
            new("period", "h", "time in which they came out", 0.01, 1000),
            new("dry-solids", "%", "dry part of the wet grits", 0, 100) { Default = 100 },
            new("lime", "t/h", "lime fed in that time", 0, 500),
        ],
        Outputs =
        [
            new("rate", "kg/h", "dry grits an hour"),
            new("share", "%", "dry grits of the lime fed"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (grits, period, solids, lime) = (inputs["grits"], inputs["period"], inputs["dry-solids"], inputs["lime"]);
        if (lime <= 0)
        {
            return Worksheet.Refuse("lime", $"lime is {lime:0.##} t/h: a share of the lime needs a feed above 0 t/h");
        }

        var rate = grits * solids / 100 / period;
        var share = 100 * rate / (1000 * lime);
        if (share > 100)
        {
            return Worksheet.Refuse("grits", $"grits come to {share:0} % of the lime: not more than was fed can come out; grits are in kg, over the period");
        }

        var sheet = new Worksheet();
        sheet.Give("rate", rate, $"rate = {grits:0.###} kg x {solids:0.##} / 100 / {period:0.###} h = {rate:0.0} kg/h dry");
        sheet.Give("share", share, $"share = 100 x {rate:0.0} / (1000 x {lime:0.##}) = {share:0.00} %");
        Advise(sheet, share);
        return sheet.ToValues();
    }

    private static void Advise(Worksheet sheet, double share)
    {
        if (share > 3)
        {
            sheet.Note($"{share:0.0} % of the lime came out as grits, which is high: hard-burnt or coarse lime, a cool slaker or a weak agitator; or wet grits weighed as dry.");
        }
        else if (share > 2)
        {
            sheet.Note($"{share:0.0} % grits is at the upper end of the usual 0.5 to 2 %: the lime may be harder burnt than usual, or a heap from before was weighed with it.");
        }
        else if (share < 0.2)
        {
            sheet.Note($"Hardly any grits ({share:0.00} %): clean, soft-burnt lime, or the classifier passes its grits on into the mud.");
        }
    }
}
