namespace Logbook.Demo.Line;

/// <summary>What drives the line from outside: everything else follows by balance.</summary>
internal enum Lever
{
    /// <summary>Of the liquor from the dissolving tank, g/L as Na2O, hot.</summary>
    Strength,

    /// <summary>Sulphide's share of the total titratable alkali, 0 to 1.</summary>
    Sulphidity,

    /// <summary>Of the green liquor, 0 to 1.</summary>
    GreenCausticity,

    /// <summary>Green liquor to the slaker, m3/h.</summary>
    Flow,

    /// <summary>Of the raw green liquor, degC.</summary>
    RawTemperature,

    /// <summary>Green liquor to the slaker, degC.</summary>
    CoolerOutlet,

    /// <summary>CaO in the lime that reacts, 0 to 1.</summary>
    Availability,

    /// <summary>degC.</summary>
    LimeTemperature,

    /// <summary>Lime that the screw really brings for what the dose asks, 1 when it is right.</summary>
    LimeFactor,

    /// <summary>Of the lime, raked out unslaked, 0 to 1.</summary>
    GritsShare,

    /// <summary>Water that leaves the slaker as steam in quiet running, kg a m3 of green liquor.</summary>
    Evaporation,

    /// <summary>1 while the green liquor filter runs, 0 while it is washed.</summary>
    FilterRunning,

    /// <summary>Dregs in the raw green liquor, mg/L.</summary>
    RawDregs,

    /// <summary>Dregs that pass the filter, mg/L.</summary>
    FiltrateDregs,

    /// <summary>Digester's draw of white liquor beside what is made, m3/h.</summary>
    DigesterDraw,

    /// <summary>Dissolving tank's draw of weak wash beside what is made, m3/h.</summary>
    DissolvingDraw,

    /// <summary>Kiln's lime beside what is used, t/h.</summary>
    KilnLime,

    /// <summary>Water to the mud tank, m3/h.</summary>
    ReslurryWater,

    /// <summary>Solids of the white liquor filter's cake, 0 to 1.</summary>
    CakeSolids,

    /// <summary>Solids of the mud to the kiln, 0 to 1.</summary>
    KilnFeedSolids,

    /// <summary>Of the weak wash, degC.</summary>
    WeakWashTemperature,

    /// <summary>Of the white liquor behind its filter, degC.</summary>
    WhiteLiquorTemperature,
}

/// <summary>A real change of the plant: a lever is moved by so much from one time to another.</summary>
internal sealed record PlantChange(Lever Lever, DateTimeOffset From, DateTimeOffset To, double By);
