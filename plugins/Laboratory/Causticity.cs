using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Laboratory;

/// <summary>Causticity from the three end points alone, and corrected for the hydroxide that came with the green liquor.</summary>
public sealed class Causticity : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "causticity",
        Title = "Causticity of a titrated liquor",
        System = "laboratory",
        Purpose = "How much of the carbonate has become hydroxide. The plain figure needs the three end points only: acid strength and "
            + "sample volume fall out of it. The corrected one takes off the hydroxide that the green liquor already carried, so that it "
            + "tells the work of this line alone; it comes out about three points lower.",
        Formula = "naoh = 2 a - b; na2co3 = c - b (mL)\n"
            + "causticity = 100 naoh / (naoh + na2co3)\n"
            + "factor = TTA of this liquor / gl-tta, TTA = c acid 30.989 / sample\n"
            + "corrected = 100 (naoh - factor gl-naoh) / (naoh - factor gl-naoh + na2co3), all as g/L Na2O",
        Source = "Three end points with barium chloride and formaldehyde: from memory of TAPPI T 624 and SCAN-N 30; computed from IUPAC atomic weights",
        LeavesOut = "Sulphite, thiosulphate, polysulphide, silicate and borate, each of which moves an end point; "
            + "and the carbon dioxide that a sample takes up while it stands.",
        Inputs =
        [
            new("a", "mL", "first end point, cumulative", 0, 500),
            new("b", "mL", "second end point, after formaldehyde, cumulative", 0, 500) { CountsOnFrom = "a" },
            new("c", "mL", "third end point, cumulative", 0, 500) { CountsOnFrom = "b" },
            new("acid", "mol/L", "strength of the acid", 0.01, 12) { Required = false },
            new("sample", "mL", "volume of liquor titrated", 0.1, 500) { Required = false },
            new("liquor", "1", "1 green, 2 white, 3 weak wash, 4 on its way through slaker and causticizers", 1, 4) { Required = false },
            new("gl-naoh", "g/L Na2O", "hydroxide of the green liquor", 0, 100) { Required = false },
            new("gl-tta", "g/L Na2O", "total titratable alkali of the green liquor", 1, 250) { Required = false },
        ],
        Outputs =
        [
            new("causticity", "%", "hydroxide in hydroxide and carbonate"),
            new("corrected-causticity", "%", "the same without the green liquor's hydroxide"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var ends = new EndPoints(inputs["a"], inputs["b"], inputs["c"]);
        if (ends.Impossible() is { } impossible)
        {
            return impossible;
        }

        if (inputs.Find("liquor") is { } liquor && liquor != Math.Round(liquor))
        {
            return Worksheet.Refuse("liquor", $"liquor is {liquor:0.##}: it is 1 for green, 2 for white, 3 for weak wash, 4 for liquor on its way");
        }

        if (inputs.Find("gl-naoh") > inputs.Find("gl-tta"))
        {
            return Worksheet.Refuse("gl-naoh", $"gl-naoh ({inputs["gl-naoh"]:0.##} g/L) is above gl-tta ({inputs["gl-tta"]:0.##} g/L), of which it is a part");
        }

        var sheet = new Worksheet();
        sheet.Step($"naoh = 2 x {ends.A:0.###} - {ends.B:0.###} = {ends.Hydroxide:0.###} mL");
        sheet.Step($"na2co3 = {ends.C:0.###} - {ends.B:0.###} = {ends.Carbonate:0.###} mL");
        sheet.Give("causticity", ends.Causticity,
            $"causticity = 100 x {ends.Hydroxide:0.###} / ({ends.Hydroxide:0.###} + {ends.Carbonate:0.###}) = {ends.Causticity:0.00} %");
        Correct(sheet, inputs, ends);
        Advise(sheet, ends.Causticity, inputs.Find("liquor"));
        return sheet.ToValues();
    }

    private static void Correct(Worksheet sheet, Inputs inputs, EndPoints ends)
    {
        string[] roles = ["acid", "sample", "gl-naoh", "gl-tta"];
        var given = roles.Count(inputs.Has);
        if (given == 0)
        {
            return;
        }

        if (given < roles.Length)
        {
            sheet.Note($"The corrected causticity is left out: it also needs {string.Join(", ", roles.Where(r => !inputs.Has(r)))}.");
            return;
        }

        var perMl = inputs["acid"] / inputs["sample"] * MolarMass.Na2OPerEquivalent;
        var tta = ends.C * perMl;
        var factor = tta / inputs["gl-tta"];
        var made = (ends.Hydroxide * perMl) - (factor * inputs["gl-naoh"]);
        var left = ends.Carbonate * perMl;
        sheet.Step($"TTA = {ends.C:0.###} x {inputs["acid"]:0.####} x {MolarMass.Na2OPerEquivalent:0.#####} / {inputs["sample"]:0.###} = {tta:0.000} g/L Na2O");
        sheet.Step($"factor = {tta:0.000} / {inputs["gl-tta"]:0.###} = {factor:0.00000}");
        sheet.Step($"naoh made = {ends.Hydroxide * perMl:0.000} - {factor:0.00000} x {inputs["gl-naoh"]:0.###} = {made:0.000} g/L Na2O");
        if (made < 0)
        {
            sheet.Note($"This liquor holds less hydroxide than the green liquor brought with it: the samples may be swapped, or this one has taken up carbon dioxide.");
            return;
        }

        var corrected = 100 * made / (made + left);
        sheet.Give("corrected-causticity", corrected, $"corrected = 100 x {made:0.000} / ({made:0.000} + {left:0.000}) = {corrected:0.00} %");
    }

    private static void Advise(Worksheet sheet, double causticity, double? liquor)
    {
        if (causticity > 90)
        {
            sheet.Note($"{causticity:0.0} % is more than liquor of usual strength reaches at equilibrium: the lime is likely overdosed, or end point b was read late or c early.");
        }
        else if (liquor is null or 2 && causticity is > 30 and < 72)
        {
            sheet.Note($"{causticity:0.0} % is usual at the slaker's overflow but low for finished white liquor: lime short or slow to react, or a sample that took up carbon dioxide while it stood.");
        }
    }
}
