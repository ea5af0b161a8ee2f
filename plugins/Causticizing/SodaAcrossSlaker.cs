using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Causticizing;

/// <summary>Soda and sulphide go through slaker and causticizers unchanged: green liquor foretells white liquor.</summary>
public sealed class SodaAcrossSlaker : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = "soda-across-slaker",
        Title = "Soda and sulphide from green to white liquor",
        System = "causticizers",
        Purpose = "Sodium and sulphide take no part in causticizing. So white liquor should hold the green liquor's TTA, a little stronger for the water that "
            + "lime binds and steam takes, and the same sulphidity on TTA. What differs is water added, a sample, or an end point.",
        Formula = "expected-wl-tta = gl-tta expected-ratio\nexpected-wl-sulphidity = gl-sulphidity-tta\n"
            + "tta-ratio = wl-tta / gl-tta\ndilution = 100 (expected-ratio / tta-ratio - 1)\nsulphide-difference = wl-sulphidity-tta - gl-sulphidity-tta",
        Source = "Conservation of sodium and sulphide; ratio 1.0340 (both at 25 degC) computed from IUPAC atomic weights and Laliberte 2009 for liquor of 120 g/L "
            + "with 8 kg/m3 evaporated (1.0248 hot to hot); method uncertainties: common practice, no source",
        LeavesOut = "The hours between the two samples, oxidation of sulphide, and water added on the way, which shows as dilution.",
        Inputs =
        [
            new("gl-tta", "g/L Na2O", "total titratable alkali of the green liquor, at 25 degC", 1, 250),
            new("wl-tta", "g/L Na2O", "total titratable alkali of the white liquor, at 25 degC", 1, 250) { Required = false },
            new("gl-sulphidity-tta", "%", "sulphidity of the green liquor on TTA", 0, 100),
            new("wl-sulphidity-tta", "%", "sulphidity of the white liquor on TTA", 0, 100) { Required = false },
            new("expected-ratio", "1", "TTA of undiluted white liquor over that of its green liquor", 0.8, 1.3) { Default = 1.0340 },
        ],
        Outputs =
        [
            new("expected-wl-tta", "g/L Na2O", "total titratable alkali that white liquor should have")
            {
                LitreAt = "25 degC",
                Estimates = "wl-tta",
                MethodU = "1.2",
                WhenOff = "water was added between the samples, or more steam left than usual: the white liquor really is weaker or stronger",
                Moves = ["wl-tta"],
            },
            new("expected-wl-sulphidity", "%", "sulphidity on TTA that white liquor should have")
            {
                Estimates = "wl-sulphidity-tta",
                MethodU = "0.4",
                WhenOff = "sulphide was oxidised or make-up added between the samples, so that the white liquor's sulphidity is not what it usually is beside the green liquor's",
                Moves = ["wl-sulphidity-tta"],
            },
            new("tta-ratio", "1", "TTA of the white liquor over that of the green liquor"),
            new("dilution", "%", "water added, of the undiluted volume"),
            new("sulphide-difference", "points", "sulphidity of the white liquor less that of the green liquor"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (green, greenSulphidity, ratio) = (inputs["gl-tta"], inputs["gl-sulphidity-tta"], inputs["expected-ratio"]);
        var sheet = new Worksheet();
        sheet.Give("expected-wl-tta", green * ratio, $"expected-wl-tta = {green:0.00} x {ratio:0.0000} = {green * ratio:0.00} g/L");
        sheet.Give("expected-wl-sulphidity", greenSulphidity, $"expected-wl-sulphidity = {greenSulphidity:0.00} %");
        if (inputs.Find("wl-tta") is { } white)
        {
            var found = white / green;
            var dilution = 100 * ((ratio / found) - 1);
            sheet.Give("tta-ratio", found, $"tta-ratio = {white:0.00} / {green:0.00} = {found:0.0000}");
            sheet.Give("dilution", dilution, $"dilution = 100 x ({ratio:0.0000} / {found:0.0000} - 1) = {dilution:0.0} %");
            AdviseOnSoda(sheet, dilution);
        }

        if (inputs.Find("wl-sulphidity-tta") is { } whiteSulphidity)
        {
            var difference = whiteSulphidity - greenSulphidity;
            sheet.Give("sulphide-difference", difference, $"sulphide-difference = {whiteSulphidity:0.00} - {greenSulphidity:0.00} = {difference:0.00} points");
            if (Math.Abs(difference) > 1.5)
            {
                sheet.Note($"Sulphidity differs by {difference:+0.0;-0.0} points though lime leaves sulphide alone: end point b of one titration, oxidation of a sample, or liquors of different hours.");
            }
        }

        return sheet.ToValues();
    }

    private static void AdviseOnSoda(Worksheet sheet, double dilution)
    {
        if (dilution > 8)
        {
            sheet.Note($"White liquor is {dilution:0.0} % more dilute than its green liquor explains: wash or scrubber water, weak filtrate returned, or samples of different hours or temperatures.");
        }
        else if (dilution < -2)
        {
            sheet.Note($"White liquor is stronger than its green liquor explains: more steam than usual, a hot figure set against a laboratory one, or samples of different hours.");
        }
    }
}
