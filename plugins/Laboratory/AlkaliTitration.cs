using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Laboratory;

/// <summary>The whole three-end-point titration of one liquor.</summary>
public sealed class AlkaliTitration : ICalculation
{
    /// <summary>Laboratory temperature at which the sample's volume was measured.</summary>
    private const double LaboratoryTemperature = 25;

    public CalculationInfo Info { get; } = new()
    {
        Id = "alkali-titration",
        Title = "Alkali of a liquor from the three end points",
        System = "laboratory",
        Purpose = "Hydroxide, sulphide and carbonate of green liquor, white liquor or weak wash, and the figures made of them. All are as Na2O per "
            + "litre at 25 degC, the litre that the laboratory has; tta-line is the same liquor as the hot line has it, 2 to 4 % weaker.",
        Formula = "A, B, C = a, b, c - start - blank (mL); k = 30.98927 acid / sample\n"
            + "naoh = k (2 A - B); na2s = 2 k (B - A); na2co3 = k (C - B)\n"
            + "ea = k A; aa = k B; tta = k C\n"
            + "sulphidity-aa = 200 (B - A) / B; sulphidity-tta = 200 (B - A) / C; activity = 100 B / C\n"
            + "causticity = 100 (2 A - B) / (2 A + C - 2 B)\n"
            + "tta-line = tta density(line-temperature) / density(25); na2co3-line likewise",
        Source = "Barium chloride and formaldehyde method: from memory of TAPPI T 624 and SCAN-N 30; computed from IUPAC atomic weights; "
            + "densities: Laliberte 2009, J. Chem. Eng. Data 54, 1725",
        LeavesOut = "Sulphite, thiosulphate, polysulphide, silicate and borate, each of which moves an end point; too little barium chloride, which "
            + "raises a; carbon dioxide taken up by a sample that stood.",
        Inputs =
        [
            new("a", "mL", "first end point, burette reading", 0, 500),
            new("b", "mL", "second end point, after formaldehyde, burette reading", 0, 500) { CountsOnFrom = "a" },
            new("c", "mL", "third end point, burette reading", 0, 500) { CountsOnFrom = "b" },
            new("acid", "mol/L", "strength of the acid", 0.01, 12),
            new("sample", "mL", "volume of liquor titrated", 0.1, 500),
            new("start", "mL", "burette reading at the start", 0, 500) { Default = 0 },
            new("blank", "mL", "acid that the reagents alone take", 0, 50) { Default = 0 },
            new("line-temperature", "degC", "temperature of the liquor in the line", 10, 110) { Required = false },
            new("liquor", "1", "1 green, 2 white, 3 weak wash", 1, 3) { Required = false },
        ],
        Outputs =
        [
            new("naoh", "g/L Na2O", "hydroxide, at 25 degC") { LitreAt = "25 degC" },
            new("na2s", "g/L Na2O", "sulphide, at 25 degC") { LitreAt = "25 degC" },
            new("na2co3", "g/L Na2O", "carbonate, at 25 degC") { LitreAt = "25 degC" },
            new("ea", "g/L Na2O", "effective alkali, at 25 degC") { LitreAt = "25 degC" },
            new("aa", "g/L Na2O", "active alkali, at 25 degC") { LitreAt = "25 degC" },
            new("tta", "g/L Na2O", "total titratable alkali, at 25 degC") { LitreAt = "25 degC" },
            new("tta-line", "g/L Na2O", "total titratable alkali at the line's temperature") { LitreAt = "line-temperature" },
            new("na2co3-line", "g/L Na2O", "carbonate at the line's temperature") { LitreAt = "line-temperature" },
            new("sulphidity-aa", "%", "sulphide of the active alkali"),
            new("sulphidity-tta", "%", "sulphide of the total titratable alkali"),
            new("activity", "%", "active alkali of the total titratable alkali"),
            new("causticity", "%", "hydroxide in hydroxide and carbonate"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var taken = inputs["start"] + inputs["blank"];
        var ends = new EndPoints(inputs["a"] - taken, inputs["b"] - taken, inputs["c"] - taken);
        if (ends.Impossible() is { } impossible)
        {
            return impossible;
        }

        var kind = inputs.Find("liquor");
        if (kind is { } k && k != Math.Round(k))
        {
            return Worksheet.Refuse("liquor", $"liquor is {k:0.##}: it is 1 for green, 2 for white, 3 for weak wash");
        }

        var sheet = new Worksheet();
        Strengths(sheet, ends, inputs["acid"], inputs["sample"], taken);
        Ratios(sheet, ends);
        Line(sheet, ends, inputs);
        Advise(sheet, ends, kind);
        return sheet.ToValues();
    }

    private static void Strengths(Worksheet sheet, EndPoints ends, double acid, double sample, double taken)
    {
        var perMl = MolarMass.Na2OPerEquivalent * acid / sample;
        sheet.Step($"A, B, C = {ends.A:0.###}, {ends.B:0.###}, {ends.C:0.###} mL, {taken:0.###} mL taken off each");
        sheet.Step($"k = {MolarMass.Na2OPerEquivalent:0.00000} x {acid:0.0000} / {sample:0.###} = {perMl:0.00000} g/L Na2O per mL");
        sheet.Give("naoh", perMl * ends.Hydroxide, $"naoh = {perMl:0.00000} x (2 x {ends.A:0.###} - {ends.B:0.###}) = {perMl * ends.Hydroxide:0.000} g/L");
        sheet.Give("na2s", perMl * ends.Sulphide, $"na2s = {perMl:0.00000} x 2 x ({ends.B:0.###} - {ends.A:0.###}) = {perMl * ends.Sulphide:0.000} g/L");
        sheet.Give("na2co3", perMl * ends.Carbonate, $"na2co3 = {perMl:0.00000} x ({ends.C:0.###} - {ends.B:0.###}) = {perMl * ends.Carbonate:0.000} g/L");
        sheet.Give("ea", perMl * ends.A, $"ea = {perMl:0.00000} x {ends.A:0.###} = {perMl * ends.A:0.000} g/L");
        sheet.Give("aa", perMl * ends.B, $"aa = {perMl:0.00000} x {ends.B:0.###} = {perMl * ends.B:0.000} g/L");
        sheet.Give("tta", perMl * ends.C, $"tta = {perMl:0.00000} x {ends.C:0.###} = {perMl * ends.C:0.000} g/L");
    }

    private static void Ratios(Worksheet sheet, EndPoints ends)
    {
        var (sulphide, a, b, c) = (ends.Sulphide, ends.A, ends.B, ends.C);
        sheet.Give("sulphidity-aa", 100 * sulphide / b, $"sulphidity-aa = 200 x ({b:0.###} - {a:0.###}) / {b:0.###} = {100 * sulphide / b:0.00} %");
        sheet.Give("sulphidity-tta", 100 * sulphide / c, $"sulphidity-tta = 200 x ({b:0.###} - {a:0.###}) / {c:0.###} = {100 * sulphide / c:0.00} %");
        sheet.Give("activity", 100 * b / c, $"activity = 100 x {b:0.###} / {c:0.###} = {100 * b / c:0.00} %");
        sheet.Give("causticity", ends.Causticity, $"causticity = 100 x {ends.Hydroxide:0.###} / ({ends.Hydroxide:0.###} + {ends.Carbonate:0.###}) = {ends.Causticity:0.00} %");
    }

    private static void Line(Worksheet sheet, EndPoints ends, Inputs inputs)
    {
        if (inputs.Find("line-temperature") is not { } hot)
        {
            return;
        }

        var tta = MolarMass.Na2OPerEquivalent * inputs["acid"] / inputs["sample"] * ends.C;
        var liquor = Liquor.Of(tta, ends.Sulphide / ends.C, ends.Causticity / 100, LaboratoryTemperature);
        var (cold, warm) = (liquor.Density(LaboratoryTemperature), liquor.Density(hot));
        sheet.Give("tta-line", liquor.Tta(hot), $"tta-line = {tta:0.000} x {warm:0.0} / {cold:0.0} = {liquor.Tta(hot):0.000} g/L at {hot:0.#} degC");
        var (carbonate, carbonateHot) = (tta * ends.Carbonate / ends.C, liquor.Tta(hot) * ends.Carbonate / ends.C);
        sheet.Give("na2co3-line", carbonateHot, $"na2co3-line = {carbonate:0.000} x {warm:0.0} / {cold:0.0} = {carbonateHot:0.000} g/L at {hot:0.#} degC");
    }

    // Usual bands: from memory of the kraft recovery courses, and common practice, no source.
    private static void Advise(Worksheet sheet, EndPoints ends, double? kind)
    {
        var causticity = ends.Causticity;
        if (kind is 1 && causticity > 25)
        {
            sheet.Note($"A causticity of {causticity:0.0} % is high for green liquor (usually 10 to 20 %): white liquor or strong weak wash in the sample, or end points a and b read too far apart from c.");
        }
        else if (kind is 2 && causticity < 72)
        {
            sheet.Note($"A causticity of {causticity:0.0} % is low for white liquor (usually 78 to 85 %): lime short or slow, or a sample that took up carbon dioxide while it stood.");
        }
        else if (kind is 2 && causticity > 90)
        {
            sheet.Note($"A causticity of {causticity:0.0} % is more than white liquor of usual strength reaches at equilibrium: too much lime, or end point b read late or c early.");
        }

        if (kind is 1 or 2 && 100 * ends.Sulphide / ends.C is < 10 or > 45)
        {
            sheet.Note($"A sulphidity of {100 * ends.Sulphide / ends.C:0.0} % on TTA is outside the usual 15 to 40 %: a change of make-up, or formaldehyde that was not neutral or not enough.");
        }
    }
}
