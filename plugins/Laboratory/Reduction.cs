using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Laboratory;

/// <summary>How much of the sulphur left the recovery boiler as sulphide.</summary>
public sealed class Reduction : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "reduction",
        Title = "Degree of reduction of the green liquor",
        System = "raw-green-liquor",
        Purpose = "How well the boiler's bed reduces. What stays sulphate goes round as dead load. The strict figure also counts sulphite and thiosulphate.",
        Formula = "reduction = 100 S(na2s) / (S(na2s) + S(na2so4)), S = moles of sulphur\n"
            + "strict-reduction = 100 S(na2s) / (S(na2s) + S(na2so4) + S(na2so3) + S(na2s2o3)), two in each na2s2o3",
        Source = "Definition as for kraft green liquor, by moles: computed from IUPAC atomic weights; the strict form from memory; usual band 90 to 96 % from memory",
        LeavesOut = "Polysulphide, and sulphide that the air turned into thiosulphate on the way.",
        Inputs =
        [
            new("na2s", "g/L", "sodium sulphide, as the compound", 0, 200),
            new("na2so4", "g/L", "sodium sulphate, as the compound", 0, 200),
            new("na2s2o3", "g/L", "sodium thiosulphate, as the compound", 0, 200) { Required = false },
            new("na2so3", "g/L", "sodium sulphite, as the compound", 0, 200) { Required = false },
        ],
        Outputs =
        [
            new("reduction", "%", "sulphide of sulphide and sulphate"),
            new("strict-reduction", "%", "sulphide of all the sulphur; needs thiosulphate and sulphite"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var sulphide = inputs["na2s"] / MolarMass.Na2S;
        var sulphate = inputs["na2so4"] / MolarMass.Na2SO4;
        if (sulphide + sulphate <= 0)
        {
            return Worksheet.Refuse("na2s", $"na2s and na2so4 are both 0 g/L: there is no sulphur to have been reduced");
        }

        var sheet = new Worksheet();
        var reduction = 100 * sulphide / (sulphide + sulphate);
        sheet.Step($"sulphur as sulphide = {inputs["na2s"]:0.###} / {MolarMass.Na2S:0.000} = {sulphide:0.00000} mol/L; as sulphate = {inputs["na2so4"]:0.###} / {MolarMass.Na2SO4:0.000} = {sulphate:0.00000} mol/L");
        sheet.Give("reduction", reduction, $"reduction = 100 x {sulphide:0.00000} / ({sulphide:0.00000} + {sulphate:0.00000}) = {reduction:0.00} %");
        if (inputs.Find("na2s2o3") is { } thiosulphate && inputs.Find("na2so3") is { } sulphite)
        {
            var other = (2 * thiosulphate / MolarMass.Na2S2O3) + (sulphite / MolarMass.Na2SO3);
            var strict = 100 * sulphide / (sulphide + sulphate + other);
            sheet.Give("strict-reduction", strict, $"strict-reduction = 100 x {sulphide:0.00000} / ({sulphide + sulphate:0.00000} + {other:0.00000}) = {strict:0.00} %");
        }
        else if (inputs.Has("na2s2o3") || inputs.Has("na2so3"))
        {
            sheet.Note($"The strict figure is left out: it needs both na2s2o3 and na2so3.");
        }

        if (reduction < 90)
        {
            sheet.Note($"{reduction:0.0} % is below the usual 90 to 96 %: a cold or starved bed, or sulphide that the air oxidised before the sample was titrated.");
        }

        return sheet.ToValues();
    }
}
