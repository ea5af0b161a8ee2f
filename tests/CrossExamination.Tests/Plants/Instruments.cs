namespace CrossExamination.Tests.Plants;

/// <summary>
/// What perfect instruments would show of a process. The formulas are forward ones, written for the simulators alone: titration
/// end points from composition, temperature from heat, density from strength.
/// </summary>
internal static class Instruments
{
    /// <summary>kg per turn that the screw was once found to deliver.</summary>
    private const double PerTurn = 13.8;

    /// <summary>g of Na2O per mL of 0.5 mol/L acid and 5 mL of liquor, per litre.</summary>
    private const double PerMl = 0.5 * 30.98927 / 5;

    /// <param name="now">What is read now.</param>
    /// <param name="then">The liquor that leaves as white liquor now was like this when it was limed.</param>
    public static double[] Show(Process now, Process then)
    {
        var shown = new double[Enum.GetValues<Tag>().Length];
        White(shown, then, now.Dilution);
        var (ohGreen, sulphide) = (now.Strength * (1 - now.Sulphidity) * now.GreenCausticity, now.Strength * now.Sulphidity);
        shown[(int)Tag.GreenA] = (ohGreen + (sulphide / 2)) / PerMl;
        shown[(int)Tag.GreenB] = (ohGreen + sulphide) / PerMl;
        shown[(int)Tag.GreenC] = now.Strength / PerMl;
        var fed = now.Reacted + now.FreeLime;
        var lime = fed * now.Flow / (10 * now.Available);
        shown[(int)Tag.GreenFlow] = now.Flow;
        shown[(int)Tag.LimeWeigher] = lime;
        shown[(int)Tag.LimeScrew] = lime * 1000 / 60 / (PerTurn * now.ScrewFill);
        shown[(int)Tag.LimeCao] = now.Available;
        shown[(int)Tag.GreenTemperature] = now.GreenTemperature;
        shown[(int)Tag.SlakerTemperature] = Slaker(now, fed);
        var tank = now.Strength / Process.Hot(now.TankTemperature);
        shown[(int)Tag.GreenDensity] = Water(now.TankTemperature) + (1.50175 * tank) - (9.499e-4 * tank * tank) + now.DeadLoad;
        shown[(int)Tag.GreenTankTemperature] = now.TankTemperature;
        Mud(shown, now, fed, lime);
        shown[(int)Tag.WeakWash] = now.WeakWash;
        shown[(int)Tag.WeakWashTemperature] = now.WeakWashTemperature;
        shown[(int)Tag.WeakWashDensity] = Water(now.WeakWashTemperature) + (1.347 * now.WeakWash / (1 + (4.55e-4 * (now.WeakWashTemperature - 25))));
        shown[(int)Tag.Grits] = now.Grits;
        return shown;
    }

    private static void White(double[] shown, Process then, double dilution)
    {
        var strength = then.Strength * 1.034 / (1 + dilution);
        var sulphide = strength * (then.Sulphidity - then.SulphideLost);
        var hydroxide = (strength - sulphide) * then.Causticity;
        shown[(int)Tag.WhiteA] = (hydroxide + (sulphide / 2)) / PerMl;
        shown[(int)Tag.WhiteB] = (hydroxide + sulphide) / PerMl;
        shown[(int)Tag.WhiteC] = strength / PerMl;
    }

    /// <summary>Heat of slaking warms liquor and lime and evaporates water, per m3 of green liquor.</summary>
    private static double Slaker(Process now, double fed)
    {
        const double LiquorHeat = 1130 * 3.65;
        var limeHeat = fed / (now.Available / 100) * 0.9;
        return ((LiquorHeat * now.GreenTemperature) + (limeHeat * now.LimeTemperature) + (fed * 1150) - (now.Evaporation * 2250)) / (LiquorHeat + limeHeat);
    }

    private static void Mud(double[] shown, Process now, double fed, double lime)
    {
        var made = ((now.Reacted * 1.7848) + (now.FreeLime * 1.32125)) * now.Flow / 1000;
        made += (lime * (1 - (now.Available / 100))) - (now.Grits / 1000);
        var solids = 2710 * (now.MudDensity - 980) / (2710 - 980);
        shown[(int)Tag.MudFlow] = made * (1 - now.ToStore) * 1000 / solids;
        shown[(int)Tag.MudDensity] = now.MudDensity;
    }

    /// <summary>Density of water, kg/m3, within 0.1 from 60 to 95 degC of the usual tables.</summary>
    private static double Water(double t) => 1005.084 - (0.21077 * t) - (0.0025663 * t * t);
}
