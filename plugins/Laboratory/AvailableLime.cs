using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Laboratory;

/// <summary>Available lime by the rapid sugar test.</summary>
public sealed class AvailableLime : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "available-lime",
        Title = "Available lime by the sugar test",
        System = "laboratory",
        Purpose = "The part of the lime that can react. The slaked sample goes into solution with sugar and is titrated to phenolphthalein. The dose of "
            + "the slaker hangs on this figure.",
        Formula = "available-cao = 100 acid-volume acid 0.0280385 / sample",
        Source = "ASTM C25, available lime index by rapid sugar test; factor computed from IUPAC atomic weights",
        LeavesOut = "Hard-burnt lime that slakes too slowly for the test: the value is defined by the method.",
        Inputs =
        [
            new("acid-volume", "mL", "acid taken to phenolphthalein", 0, 1000),
            new("acid", "mol/L", "strength of the acid", 0.01, 12),
            new("sample", "g", "lime weighed in", 0.001, 100),
        ],
        Outputs = [new("available-cao", "%", "available CaO of the lime")],
    };

    public Outcome Run(Inputs inputs)
    {
        var (volume, acid, sample) = (inputs["acid-volume"], inputs["acid"], inputs["sample"]);
        var share = 100 * volume * acid * MolarMass.CaO / 2000 / sample;
        if (share > 100.5)
        {
            return Worksheet.Refuse("acid-volume", $"acid-volume gives {share:0.0} % CaO: lime cannot hold more than 100 %; acid-volume is in mL, sample in g of the portion titrated");
        }

        var sheet = new Worksheet();
        sheet.Give("available-cao", share, $"available-cao = 100 x {volume:0.00} x {acid:0.0000} x {MolarMass.CaO / 2000:0.0000000} / {sample:0.0000} = {share:0.00} %");
        if (share < 80)
        {
            sheet.Note($"{share:0.0} % is low for reburned lime (usually 85 to 92 %, from memory): hard-burnt or unburnt lime, dead load in the kiln's cycle, or a sample that took up moisture and carbon dioxide.");
        }
        else if (share > 96)
        {
            sheet.Note($"{share:0.0} % is high for reburned lime: purchased lime, or an acid stronger than entered.");
        }

        return sheet.ToValues();
    }
}
