using Logbook.Contracts;

namespace Logbook.Plugins.Shared;

/// <summary>Total titratable alkali of a liquor from its density and temperature.</summary>
internal static class StrengthByDensity
{
    private const double LaboratoryTemperature = 25;

    public const string Formula =
        "density - offset = density of the liquor (tta, temperature), solved for tta\n"
        + "1 / density = water / density(water) + sum of share / density(salt)\n"
        + "density(salt) = ((c0 (1 - water) + c1) exp(1e-6 (t + c4)^2)) / ((1 - water) + c2 + c3 t), shares by mass\n"
        + Liquor.Coefficients + "\n"
        + "tta-25 = tta density(25) / density(temperature)";

    /// <summary>The readings that every liquor's density needs, given the band in which its density can lie.</summary>
    public static IReadOnlyList<InputInfo> Roles(double lowest, double highest) =>
    [
        new("density", "kg/m3", "density as read", lowest, highest),
        new("temperature", "degC", "temperature of the liquor at the density meter", 15, 110),
    ];

    public static InputInfo Offset { get; } =
        new("offset", "kg/m3", "what the mill's own salts add to the density of the pure liquor", -20, 50) { Default = 0 };

    public static IReadOnlyList<OutputInfo> Outputs(string quantity, string methodU) =>
    [
        new("tta", "g/L Na2O", "total titratable alkali at the liquor's temperature") { LitreAt = "temperature" },
        new("tta-25", "g/L Na2O", "total titratable alkali at 25 degC, as the laboratory has it")
        {
            LitreAt = "25 degC",
            Estimates = quantity,
            MethodU = methodU,
            WhenOff = "the liquor's other salts, sulphidity or solids changed, so that density tells another strength; the density itself may be right",
            Moves = ["density"],
            NeedsFitted = ["offset"],
        },
    ];

    /// <summary>Writes both strengths on the sheet and returns the one at 25 degC, or refuses a liquor lighter than water.</summary>
    public static Refused? Give(Worksheet sheet, Inputs inputs, double sulphidity, double causticity, out double laboratory)
    {
        var (density, celsius, offset) = (inputs["density"], inputs["temperature"], inputs["offset"]);
        var (pure, water) = (density - offset, Water.Density(celsius));
        laboratory = 0;
        if (pure < water)
        {
            return Worksheet.Refuse("density", $"density ({density:0.0} less offset {offset:0.0} kg/m3) is below that of water at {celsius:0.#} degC ({water:0.0} kg/m3): density or temperature is off");
        }

        var liquor = Liquor.OfDensity(pure, sulphidity, causticity, celsius);
        var tta = liquor.Tta(celsius);
        laboratory = liquor.Tta(LaboratoryTemperature);
        sheet.Step($"density = {density:0.0} - {offset:0.0} = {pure:0.0} kg/m3; water at {celsius:0.#} degC {water:0.0} kg/m3");
        sheet.Give("tta", tta, $"tta = {tta:0.00} g/L Na2O at {celsius:0.#} degC (sulphidity {100 * sulphidity:0.#} % of TTA, causticity {100 * causticity:0.#} %)");
        sheet.Give("tta-25", laboratory, $"tta-25 = {tta:0.00} x {liquor.Density(LaboratoryTemperature):0.0} / {liquor.Density(celsius):0.0} = {laboratory:0.00} g/L Na2O");
        return null;
    }
}
