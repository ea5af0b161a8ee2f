namespace CrossExamination.Tests.Plants;

/// <summary>What the simulated line really does in one hour; changes of the plant are made here, never in the readings.</summary>
internal sealed record Process
{
    /// <summary>Green liquor strength at 25 degC, g/L Na2O.</summary>
    public double Strength { get; init; } = 124.25;

    /// <summary>Sulphide as a share of the strength.</summary>
    public double Sulphidity { get; init; } = 0.25;

    public double GreenCausticity { get; init; } = 0.15;

    /// <summary>Green liquor, m3/h.</summary>
    public double Flow { get; init; } = 300;

    public double GreenTemperature { get; init; } = 89;

    public double TankTemperature { get; init; } = 92;

    /// <summary>Available CaO in the lime, %.</summary>
    public double Available { get; init; } = 88;

    /// <summary>Share of the alkali that is hydroxide in the white liquor, as the lime control holds it.</summary>
    public double Causticity { get; init; } = 0.82;

    /// <summary>White liquor strength at 25 degC, g/L Na2O.</summary>
    public double WeakWash { get; init; } = 20;

    public double WeakWashTemperature { get; init; } = 68;

    public double MudDensity { get; init; } = 1170;

    /// <summary>Dry grits, kg/h.</summary>
    public double Grits { get; init; } = 190;

    /// <summary>Water evaporated in the slaker, kg per m3 of green liquor.</summary>
    public double Evaporation { get; init; } = 8;

    public double LimeTemperature { get; init; } = 60;

    /// <summary>Lime fed that does not react, kg CaO per m3.</summary>
    public double FreeLime { get; init; }

    /// <summary>Water added between green and white liquor, as a share.</summary>
    public double Dilution { get; init; }

    /// <summary>Dry mud that goes into store instead of to the kiln, as a share.</summary>
    public double ToStore { get; init; }

    /// <summary>Sulphide lost or gained between green and white liquor, as a share of the strength.</summary>
    public double SulphideLost { get; init; }

    /// <summary>Liquor heavier than pure liquor, kg/m3.</summary>
    public double DeadLoad { get; init; }

    /// <summary>The screw delivers so many times what it usually does.</summary>
    public double ScrewFill { get; init; } = 1;

    /// <summary>CaO that reacted, kg per m3 of green liquor: 56.077 / 61.979 of the alkali converted.</summary>
    public double Reacted => 56.077 / 61.97854 * Strength / Hot(GreenTemperature) * (1 - Sulphidity) * (Causticity - GreenCausticity);

    /// <summary>How much more a litre at 25 degC holds than a hot one.</summary>
    public static double Hot(double t) => 1 + (5.45e-4 * (t - 25));
}
