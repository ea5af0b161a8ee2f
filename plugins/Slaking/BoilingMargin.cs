using Logbook.Contracts;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Slaking;

/// <summary>How far the slaker is from boiling over.</summary>
public sealed class BoilingMargin : ICalculation
{
    // By how much green liquor (sulphidity 25 % of TTA, causticity 15 %) boils above water at one atmosphere: water
    // activity by the Pitzer model with the constants of pitzer.dat (PHREEQC 3, USGS), boiling point by IAPWS-IF97.
    // The last point goes on straight from the two before it.
    private static readonly (double Tta, double Rise)[] Elevation =
        [(0, 0), (20, 0.53), (100, 2.93), (110, 3.33), (120, 3.73), (130, 4.13), (140, 4.63), (180, 6.63)];

    public CalculationInfo Info { get; } = new()
    {
        Id = "boiling-margin",
        Title = "Margin of the slaker to boiling",
        System = "slaker",
        Purpose = "A slaker that reaches boiling throws hot caustic out within a minute. The margin is what is left, in kelvin; below 2 K is close, "
            + "below 1 K is urgent. Green liquor is taken, which boils up to a degree below white liquor of its strength, so the margin errs on the safe side.",
        Formula = "p = 101.325 (1 - 2.25577e-5 altitude)^5.25588 kPa\n"
            + "boiling-point = boiling point of water under p + rise for tta (table, straight lines between) + dead-load-rise\n"
            + "margin = boiling-point - slaker-temperature\n"
            + "rise (K) at tta 0, 20, 100, 110, 120, 130, 140 g/L: 0, 0.53, 2.93, 3.33, 3.73, 4.13, 4.63",
        Source = "Boiling point of water: IAPWS-IF97; air pressure: ISO 2533 standard atmosphere; rise: Pitzer model with pitzer.dat (PHREEQC 3, USGS); "
            + "dead-load-rise 0.5 K: common practice, no source",
        LeavesOut = "The weather's air pressure (up to about 1 K), hot spots beside the thermometer, and a rise that is still on its way.",
        Inputs =
        [
            new("slaker-temperature", "degC", "slaker, read", 0, 130),
            new("tta", "g/L Na2O", "total titratable alkali in the slaker, as hot liquor", 0, 180),
            new("altitude", "m", "of the slaker above the sea", -500, 5000) { Default = 0 },
            new("dead-load-rise", "K", "what the other salts add", 0, 3) { Default = 0.5 },
        ],
        Outputs =
        [
            new("boiling-point", "degC", "temperature at which the slaker starts to boil"),
            new("margin", "K", "what is left to boiling"),
        ],
    };

    public Outcome Run(Inputs inputs)
    {
        var (read, tta, altitude, salts) = (inputs["slaker-temperature"], inputs["tta"], inputs["altitude"], inputs["dead-load-rise"]);
        var pressure = Water.AirPressure(altitude);
        var water = Water.SaturationTemperature(pressure);
        var rise = RiseOf(tta);
        var boiling = water + rise + salts;
        var margin = boiling - read;

        var sheet = new Worksheet();
        sheet.Step($"air at {altitude:0} m = {pressure:0.00} kPa; water boils there at {water:0.00} degC");
        sheet.Step($"{tta:0.#} g/L Na2O lifts it by {rise:0.00} K, other salts by {salts:0.00} K");
        sheet.Give("boiling-point", boiling, $"boiling-point = {water:0.00} + {rise:0.00} + {salts:0.00} = {boiling:0.00} degC");
        sheet.Give("margin", margin, $"margin = {boiling:0.00} - {read:0.0#} = {margin:0.00} K");
        Advise(sheet, margin);
        return sheet.ToValues();
    }

    private static double RiseOf(double tta)
    {
        var above = Math.Max(1, Array.FindIndex(Elevation, point => point.Tta >= tta));
        var (low, high) = (Elevation[above - 1], Elevation[above]);
        return low.Rise + ((high.Rise - low.Rise) * (tta - low.Tta) / (high.Tta - low.Tta));
    }

    private static void Advise(Worksheet sheet, double margin)
    {
        if (margin < -1)
        {
            sheet.Note($"Above the computed boiling point by {-margin:0.0} K: treat it as boiling, follow the site's high-temperature procedure and keep clear of hatches. Also possible: a thermometer that reads high.");
        }
        else if (margin < 1)
        {
            sheet.Note($"Within 1 K of boiling: follow the site's high-temperature procedure, keep clear of hatches, do not sample.");
        }
        else if (margin < 2)
        {
            sheet.Note($"Within 2 K of boiling: little room for a surge of lime or a loss of green liquor. Hotter green liquor, a higher dose or fresher lime would each bring it here.");
        }
    }
}
