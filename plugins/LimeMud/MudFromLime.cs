using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.LimeMud;

/// <summary>The mud that the lime must have made.</summary>
public sealed class MudFromLime : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "mud-from-lime",
        Title = "Dry mud made of the lime fed",
        System = "lime-mud-tank",
        Purpose = "Lime comes out as mud, heavier by the carbonate it took up. Set it beside the mud to the kiln: the difference is storage, loss or a reading.",
        Formula = "made = flow (1.78480 (cao-dose - free-cao) + 1.32125 free-cao + inert - grits) / 1000",
        Source = "Stoichiometry computed from IUPAC atomic weights; method uncertainty 1.3 %: common practice, no source",
        LeavesOut = "Dregs that pass the green liquor filter, and the hours between slaker and mud tank.",
        Inputs =
        [
            new("flow", "m3/h", "green liquor to the slaker", 0, 5000),
            new("cao-dose", "kg/m3", "available CaO fed per m3 of green liquor", 0, 200),
            new("free-cao", "kg/m3", "of that, CaO left unreacted in the mud", 0, 200) { Default = 0 },
            new("inert", "kg/m3", "lime fed beside available CaO, per m3 of green liquor", 0, 200),
            new("grits", "kg/m3", "dry grits taken out, per m3 of green liquor", 0, 200),
        ],
        Outputs =
        [
            new("made", "t/h", "dry mud that the line makes")
            {
                Estimates = "dry-mud",
                MethodU = "1.3%",
                WhenOff = "lime was fed and left another way (grits, dust), or its inert part changed",
                Moves = ["grits"],
            },
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (flow, dose, free, inert, grits) = (inputs["flow"], inputs["cao-dose"], inputs["free-cao"], inputs["inert"], inputs["grits"]);
        if (free > dose)
        {
            return Worksheet.Refuse("free-cao", $"free-cao ({free:0.##} kg/m3) is above cao-dose ({dose:0.##} kg/m3), of which it is a part");
        }

        var perCubicMetre = (MolarMass.CaCO3PerCaO * (dose - free)) + (MolarMass.CalciumHydroxidePerCaO * free) + inert - grits;
        if (perCubicMetre < 0)
        {
            return Worksheet.Refuse("grits", $"grits ({grits:0.##} kg/m3) take out more than the lime makes: they are dry, per m3 of green liquor");
        }

        var sheet = new Worksheet();
        sheet.Step($"mud per m3 = {MolarMass.CaCO3PerCaO:0.00000} x ({dose:0.000} - {free:0.000}) + {MolarMass.CalciumHydroxidePerCaO:0.00000} x {free:0.000} + {inert:0.000} - {grits:0.000} = {perCubicMetre:0.000} kg/m3");
        sheet.Give("made", flow * perCubicMetre / 1000, $"made = {flow:0.##} x {perCubicMetre:0.000} / 1000 = {flow * perCubicMetre / 1000:0.000} t/h dry");
        return sheet.ToValues();
    }
}
