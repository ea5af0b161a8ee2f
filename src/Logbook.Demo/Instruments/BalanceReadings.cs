using Logbook.Demo.Line;

namespace Logbook.Demo.Instruments;

/// <summary>What each instrument and sample would show without any error, where the balances give it: tag to value in the starter site's unit.</summary>
internal static class BalanceReadings
{
    /// <summary>Salts of mill liquor that the density model leaves out, kg/m3.</summary>
    private const double DeadLoad = 6;

    /// <summary>kg a revolution of the lime screw.</summary>
    private const double ScrewFactor = 10.05;

    /// <summary>Soda bound in the mud that circulates with kiln and lime and is no part of the wash, % Na2O on dry.</summary>
    private const double BoundSoda = 0.16;

    private const double GritsSolids = 80;

    public static IReadOnlyDictionary<string, Func<Moment, double>> ByTag { get; } =
        new Dictionary<string, Func<Moment, double>>(StringComparer.Ordinal)
        {
            ["RG-D"] = m => LiquorDensity.Of(m.Green.Raw, m.Green.RawTemperature) + DeadLoad,
            ["RG-T"] = m => m.Green.RawTemperature,
            ["RG-L"] = m => m.Green.RawLevel,
            ["RG-F"] = m => m.Green.FromDissolving,
            ["RG-DR"] = m => m.Green.RawDregs,
            ["GF-DP"] = m => m.Green.FilterPressureDifference,
            ["GF-F"] = m => m.Green.Filtrate,
            ["GF-CL"] = m => m.Green.FiltrateDregs,
            ["GF-CS"] = m => m.Green.Dregs / m.Green.ConcentrateFlow,
            ["GF-HW"] = m => m.Green.HoursSinceWash,
            ["GT-L"] = m => m.Green.Level,
            ["GT-T"] = m => m.Green.RawTemperature - 0.5,
            ["GC-T1"] = m => m.Green.RawTemperature,
            ["GC-T2"] = m => m.Green.Temperature,
            ["GC-P"] = m => m.Green.Cooled.Pressure,
            ["GC-FC"] = m => m.Green.Condensate,
            ["DR-F"] = m => m.Green.ConcentrateFlow,
            ["DR-M"] = m => m.Green.Dregs * 24 / 1000 / 0.45,
            ["SL-T1"] = m => m.Hot.SlakerTemperature,
            ["SL-F1"] = m => m.Green.Flow,
            ["CL-G"] = m => m.Hot.Grits * 12 / (GritsSolids / 100),
            ["CL-GH"] = _ => 12,
            ["CL-GS"] = _ => GritsSolids,
            ["CA-T1"] = m => m.Hot.Temperatures[0],
            ["CA-T2"] = m => m.Hot.Temperatures[1],
            ["CA-T3"] = m => m.Hot.Temperatures[2],
            ["CA-FREE"] = m => 100 * m.Hot.Outflow.Lime * Molar.CaOH2 / m.Hot.Outflow.Solids,
            ["WF-F"] = m => m.Mud.White.Flow,
            ["WF-T"] = m => m.Mud.White.Temperature,
            ["WF-W"] = _ => MudSide.CakeWash,
            ["WF-S"] = m => 100 * m.Mud.CakeSolids,
            ["WT-L"] = m => m.Mud.White.Level,
            ["WT-T"] = m => m.Mud.White.Temperature - 1,
            ["WT-F"] = m => m.Mud.White.Draw,
            ["MT-D"] = m => m.Mud.TankDensity,
            ["MT-L"] = m => m.Mud.TankLevel,
            ["MT-S"] = m => 100 * m.Mud.TankSolids,
            ["MF-F"] = m => m.Mud.SlurryFlow,
            ["MF-WF"] = _ => MudSide.ShowerWater,
            ["MF-S"] = m => 100 * m.Mud.KilnFeedSolids,
            ["MF-NA"] = m => BoundSoda + (m.Mud.SodaToKiln.Tta / m.Mud.KilnFeed / 10),
            ["WW-D"] = m => LiquorDensity.Of(m.Mud.Weak, m.Mud.WeakTemperature) + 1,
            ["WW-T"] = m => m.Mud.WeakTemperature,
            ["WW-L"] = m => m.Mud.WeakLevel,
            ["WW-F"] = m => m.Mud.ToDissolving,
            ["DT-D"] = m => LiquorDensity.Of(m.Green.Made, m.Green.RawTemperature) + DeadLoad,
            ["LM-F1"] = m => m.Lime.Feed,
            ["LM-N1"] = m => m.Lime.Feed * 1000 / 60 / ScrewFactor,
            ["LM-L"] = m => m.Lime.SiloLevel,
            ["LM-T"] = m => m.Lime.Temperature,
            ["LM-CAO"] = m => 100 * m.Lime.Availability,
        };
}
