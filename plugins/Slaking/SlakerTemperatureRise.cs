using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>The slaker's heat balance over one cubic metre of green liquor, read both ways: the rise from the lime, the lime from the rise.</summary>
public sealed class SlakerTemperatureRise : ICalculation
{
    /// <summary>Heat capacity of hot water, kJ/kg K (steam tables: 4.205 at 90, 4.217 at 100 degC).</summary>
    private const double WaterHeat = 4.21;

    public CalculationInfo Info { get; } = new()
    {
        Id = "slaker-temperature-rise",
        Title = "Slaker temperature from the lime dose, and the dose from the temperature",
        System = "slaker",
        Purpose = "Slaking gives heat, and the liquor's rise shows how much lime slaked. Compare the expected temperature with the thermometer, "
            + "and the dose from the rise with what the feeders say. Evaporation is the site's own figure: each kg hides about 2 kg of CaO.",
        Formula = "lime = 100 cao-dose / available-cao\n"
            + "T = (density heat-capacity Tgl + lime lime-heat-capacity Tlime + dilution 4.21 Tdil + cao-dose slaking-heat\n"
            + "     - evaporation latent-heat - loss) / (density heat-capacity + lime lime-heat-capacity + dilution 4.21)\n"
            + "cao-from-rise = (density heat-capacity (T - Tgl) + dilution 4.21 (T - Tdil) + evaporation latent-heat + loss)\n"
            + "     / (slaking-heat - lime-heat-capacity (T - Tlime) 100 / available-cao)",
        Source = "Heat balance; slaking heat 1150 kJ/kg CaO from the CRC Handbook's heats of formation; liquor's density and heat capacity near those of "
            + "Laliberte (2009) for 120 g/L at 90 degC; method uncertainty 1 kg/m3: common practice, no source",
        LeavesOut = "The heat of the causticizing step (nothing within 4 kJ/mol at 100 degC), heat kept by the mixture while a temperature is moving, "
            + "and the vessel's losses unless given: for an hour after a move of lime or flow it tells nothing. Not to be trusted within 2 K of boiling or in start-up.",
        Inputs =
        [
            new("gl-temperature", "degC", "green liquor into the slaker", 0, 110),
            new("slaker-temperature", "degC", "slaker, read", 0, 130) { Required = false },
            new("cao-dose", "kg/m3", "available CaO fed per m3 of green liquor", 0, 200),
            new("available-cao", "%", "available CaO of the lime", 1, 100) { Default = 88 },
            new("lime-temperature", "degC", "lime into the slaker", -30, 400) { Default = 60 },
            new("density", "kg/m3", "green liquor at its temperature", 950, 1300) { Default = 1130 },
            new("heat-capacity", "kJ/kg K", "of the green liquor", 3, 4.3) { Default = 3.65 },
            new("lime-heat-capacity", "kJ/kg K", "of the lime", 0.5, 1.5) { Default = 0.9 },
            new("slaking-heat", "kJ/kg", "heat of slaking per kg CaO", 1000, 1300) { Default = 1150 },
            new("evaporation", "kg/m3", "water that leaves as steam, per m3 of green liquor", 0, 60) { Default = 0 },
            new("latent-heat", "kJ/kg", "heat that a kg of steam takes along", 2000, 2500) { Default = 2250 },
            new("loss", "kJ/m3", "other heat lost, per m3 of green liquor", 0, 50_000) { Default = 0 },
            new("dilution", "kg/m3", "wash and scrubber water into the slaker, per m3 of green liquor", 0, 500) { Default = 0 },
            new("dilution-temperature", "degC", "of that water", 0, 110) { Default = 60 },
        ],
        Outputs =
        [
            new("expected-temperature", "degC", "slaker temperature that the dose should give"),
            new("expected-rise", "K", "that temperature less the green liquor's"),
            new("observed-rise", "K", "the slaker's temperature as read, less the green liquor's"),
            new("cao-from-rise", "kg/m3", "CaO that slaked per m3 of green liquor, by the rise")
            {
                Estimates = "cao-dose",
                MethodU = "1.0",
                WhenOff = "the slaker loses or gains heat beside the balance: more or less evaporation, cold water, a start-up; the thermometers may be right",
                Moves = ["slaker-temperature"],
                Settles = TimeSpan.FromHours(1), // four times the quarter of an hour that liquor stays in a slaker: common practice, no source
                NeedsFitted = ["evaporation"],
            },
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (gl, limeT, dilutionT) = (inputs["gl-temperature"], inputs["lime-temperature"], inputs["dilution-temperature"]);
        var liquor = inputs["density"] * inputs["heat-capacity"];
        var limeHeat = 100 / inputs["available-cao"] * inputs["lime-heat-capacity"];
        var dose = inputs["cao-dose"];
        var dilution = inputs["dilution"] * WaterHeat;
        var lost = (inputs["evaporation"] * inputs["latent-heat"]) + inputs["loss"];

        var lime = dose * limeHeat;
        var slaking = dose * inputs["slaking-heat"];
        var expected = ((liquor * gl) + (lime * limeT) + (dilution * dilutionT) + slaking - lost) / (liquor + lime + dilution);

        var sheet = new Worksheet();
        sheet.Step($"green liquor takes {inputs["density"]:0.#} x {inputs["heat-capacity"]:0.###} = {liquor:0.0} kJ/m3 K");
        sheet.Step($"lime = 100 x {dose:0.00} / {inputs["available-cao"]:0.##} = {100 * dose / inputs["available-cao"]:0.00} kg/m3, takes {lime:0.0} kJ/m3 K");
        sheet.Step($"slaking gives {dose:0.00} x {inputs["slaking-heat"]:0} = {slaking:0} kJ/m3; steam and loss take {inputs["evaporation"]:0.##} x {inputs["latent-heat"]:0} + {inputs["loss"]:0} = {lost:0} kJ/m3");
        if (dilution > 0)
        {
            sheet.Step($"water takes {inputs["dilution"]:0.##} x {WaterHeat} = {dilution:0.0} kJ/m3 K, from {dilutionT:0.#} degC");
        }

        sheet.Give("expected-temperature", expected,
            $"expected = ({liquor:0.0} x {gl:0.0#} + {lime:0.0} x {limeT:0.0#} + {dilution:0.0} x {dilutionT:0.0#} + {slaking:0} - {lost:0}) / ({liquor:0.0} + {lime:0.0} + {dilution:0.0}) = {expected:0.00} degC");
        sheet.Give("expected-rise", expected - gl, $"expected-rise = {expected:0.00} - {gl:0.0#} = {expected - gl:0.00} K");
        if (inputs.Find("slaker-temperature") is { } slaker)
        {
            var net = inputs["slaking-heat"] - (limeHeat * (slaker - limeT));
            var found = ((liquor * (slaker - gl)) + (dilution * (slaker - dilutionT)) + lost) / net;
            sheet.Give("observed-rise", slaker - gl, $"observed-rise = {slaker:0.0#} - {gl:0.0#} = {slaker - gl:0.00} K");
            sheet.Give("cao-from-rise", found,
                $"cao-from-rise = ({liquor:0.0} x {slaker - gl:0.00} + {dilution:0.0} x {slaker - dilutionT:0.00} + {lost:0}) / ({inputs["slaking-heat"]:0} - {limeHeat:0.0000} x {slaker - limeT:0.00}) = {found:0.00} kg CaO/m3");
            Advise(sheet, slaker - expected, slaker - gl);
        }

        return sheet.ToValues();
    }

    // 2 K is about 8 kg CaO per m3, or 4 kg of steam: common practice, no source.
    private static void Advise(Worksheet sheet, double above, double rise)
    {
        if (rise < 0)
        {
            sheet.Note($"The slaker reads colder than the green liquor that enters it: no lime is slaking, or one of the two thermometers is off.");
        }
        else if (above > 2)
        {
            sheet.Note($"The slaker reads {above:0.0} K hotter than this dose explains: more lime than the feeder says, or hotter or stronger lime; else a thermometer, or less evaporation than entered.");
        }
        else if (above < -2)
        {
            sheet.Note($"The slaker reads {-above:0.0} K colder than this dose explains: less lime than the feeder says, or lime that does not slake; else more steam or water than entered, or a thermometer.");
        }
    }
}
