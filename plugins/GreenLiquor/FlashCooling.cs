using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.GreenLiquor;

/// <summary>The vacuum flash cooler: water leaves, heat with it, and what stays is stronger.</summary>
public sealed class FlashCooling : ICalculation
{
    private const double UsualSulphidity = 0.25;
    private const double UsualCausticity = 0.15;

    public CalculationInfo Info { get; } = new()
    {
        Id = "flash-cooling",
        Title = "Green liquor cooler: steam, condensate, strength and pressure",
        System = "green-liquor-cooler",
        Purpose = "Each degree of cooling takes about 1.8 kg of water from a cubic metre. So condensate and vapour pressure must fit the two temperatures; "
            + "and the liquor to the slaker is a little stronger than the one that came.",
        Formula = "evaporated-share = 1 - exp(-heat-capacity (inlet - outlet) / latent heat), latent heat = 2507.9 - 2.5 (inlet + outlet) / 2\n"
            + "evaporation = density evaporated-share\ncondensate = flow evaporation / 1000\n"
            + "tta-out = tta / (1 - evaporated-share) density(outlet) / density(inlet)\n"
            + "vapour-pressure = water-activity saturation pressure(outlet)",
        Source = "Heat balance; saturation pressure: IAPWS-IF97, latent heat a line through it; densities: Laliberte 2009, J. Chem. Eng. Data 54, 1725; "
            + "water activity 0.88 for 120 g/L: Pitzer model with pitzer.dat (PHREEQC 3, USGS); method uncertainties: common practice, no source",
        LeavesOut = "Heat lost to the room, liquor carried over with the steam, air drawn in, and the cooling water's side.",
        Inputs =
        [
            new("flow", "m3/h", "green liquor at the inlet", 0, 5000),
            new("inlet", "degC", "green liquor in", 40, 110),
            new("outlet", "degC", "green liquor out", 40, 110),
            new("tta", "g/L Na2O", "total titratable alkali at the inlet, as hot liquor", 1, 200),
            new("density", "kg/m3", "green liquor at the inlet", 950, 1300) { Default = 1130 },
            new("heat-capacity", "kJ/kg K", "of the green liquor", 3, 4.3) { Default = 3.65 },
            new("water-activity", "1", "vapour pressure of the liquor over that of water", 0.7, 1) { Default = 0.88 },
            new("vapour-pressure", "kPa abs", "read in the flash vessel", 1, 120) { Required = false },
            new("condensate", "m3/h", "read", 0, 500) { Required = false },
        ],
        Outputs =
        [
            new("evaporated-share", "1", "part of the liquor's mass that leaves as steam"),
            new("evaporation", "kg/m3", "steam per m3 of green liquor"),
            new("condensate", "m3/h", "condensate that the cooling should give")
            {
                Estimates = "condensate",
                MethodU = "10%",
                WhenOff = "liquor is carried over, steam escapes to the vacuum pump, or heat leaves another way: the condensate really differs",
                Moves = ["condensate"],
            },
            new("tta-out", "g/L Na2O", "total titratable alkali at the outlet, as hot liquor there") { LitreAt = "outlet" },
            new("vapour-pressure", "kPa abs", "pressure at which liquor of the outlet's temperature boils")
            {
                Estimates = "cooler-pressure",
                MethodU = "3",
                WhenOff = "air leaks in or the flash is not complete: the vessel's pressure really differs",
                Moves = ["vapour-pressure"],
            },
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (inlet, outlet, flow, tta) = (inputs["inlet"], inputs["outlet"], inputs["flow"], inputs["tta"]);
        if (outlet > inlet)
        {
            return Worksheet.Refuse("outlet", $"outlet ({outlet:0.0#} degC) is above inlet ({inlet:0.0#} degC): a cooler only cools; the two may be swapped");
        }

        var latent = Water.LatentHeat((inlet + outlet) / 2);
        var share = 1 - Math.Exp(-inputs["heat-capacity"] * (inlet - outlet) / latent);
        var evaporation = inputs["density"] * share;
        var liquor = Liquor.Of(tta, UsualSulphidity, UsualCausticity, inlet);
        var after = liquor.Evaporated(share);
        var pressure = inputs["water-activity"] * Water.SaturationPressure(outlet);

        var sheet = new Worksheet();
        sheet.Step($"latent heat = 2507.9 - 2.5 x ({inlet:0.0#} + {outlet:0.0#}) / 2 = {latent:0.0} kJ/kg");
        sheet.Give("evaporated-share", share, $"evaporated-share = 1 - exp(-{inputs["heat-capacity"]:0.###} x {inlet - outlet:0.00} / {latent:0.0}) = {share:0.00000}");
        sheet.Give("evaporation", evaporation, $"evaporation = {inputs["density"]:0.0} x {share:0.00000} = {evaporation:0.00} kg/m3");
        sheet.Give("condensate", flow * evaporation / 1000, $"condensate = {flow:0.##} x {evaporation:0.00} / 1000 = {flow * evaporation / 1000:0.000} m3/h");
        sheet.Give("tta-out", after.Tta(outlet),
            $"tta-out = {tta:0.00} / (1 - {share:0.00000}) x {after.Density(outlet):0.0} / {liquor.Density(inlet):0.0} = {after.Tta(outlet):0.00} g/L");
        sheet.Give("vapour-pressure", pressure, $"vapour-pressure = {inputs["water-activity"]:0.###} x {Water.SaturationPressure(outlet):0.00} = {pressure:0.00} kPa abs");
        Advise(sheet, inputs, flow * evaporation / 1000, pressure);
        return sheet.ToValues();
    }

    private static double OfOneKelvin(Inputs inputs) =>
        inputs["flow"] * inputs["density"] * inputs["heat-capacity"] / Water.LatentHeat(inputs["outlet"]) / 1000;

    // 5 kPa and 20 %, or what thermometers within a kelvin of each other explain: common practice, no source.
    private static void Advise(Worksheet sheet, Inputs inputs, double condensate, double pressure)
    {
        if (inputs.Find("vapour-pressure") is { } read && Math.Abs(read - pressure) > 5)
        {
            sheet.Note($"The vessel reads {read:0.0} kPa abs where the outlet's temperature wants {pressure:0.0}: air drawn in or a flash that is not complete; or a pressure or temperature sensor.");
        }

        if (inputs.Find("condensate") is { } found && condensate > 0 && Math.Abs(found - condensate) > Math.Max(0.2 * condensate, OfOneKelvin(inputs)))
        {
            sheet.Note(found > condensate
                ? (FormattableString)$"{found:0.00} m3/h of condensate is more than the cooling gives ({condensate:0.00}): liquor carried over or cooling water leaking in; or a flow meter or thermometer."
                : $"{found:0.00} m3/h of condensate is less than the cooling gives ({condensate:0.00}): steam lost to the vacuum side; or a flow meter or thermometer.");
        }
    }
}
