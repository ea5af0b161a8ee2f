namespace Logbook.Plant;

/// <summary>
/// The units, kind by kind; the first of a kind has factor 1. Exact factors of the inch-pound units: NIST SP 811,
/// appendix B. Alkali goes over by equivalents of sodium, with the conventional atomic weights of IUPAC.
/// </summary>
internal static class UnitTable
{
    private const double Pound = 0.45359237;             // kg, exact
    private const double ShortTon = 2000 * Pound;
    private const double Foot = 0.3048;                  // m, exact
    private const double Gallon = 3.785411784e-3;        // m3, US liquid, exact
    private const double Psi = 6.894757293168;           // kPa: pound-force (4.4482216152605 N) on a square inch
    private const double PoundPerCubicFoot = Pound / (Foot * Foot * Foot);
    private const double Sodium = 22.98976928, Oxygen = 15.999, Hydrogen = 1.008;

    /// <summary>g Na2O of the same equivalents as 1 g NaOH.</summary>
    internal const double Na2OPerNaOH = (2 * Sodium + Oxygen) / (2 * (Sodium + Oxygen + Hydrogen));

    /// <summary>g/L Na2O of one mole of sodium a litre.</summary>
    private const double Na2OPerMole = (2 * Sodium + Oxygen) / 2;

    internal static IReadOnlyList<Unit> All { get; } =
    [
        .. Kind("alkali", ("g/L Na2O", 1), ("g/L NaOH", Na2OPerNaOH), ("lb/ft3 Na2O", PoundPerCubicFoot),
            ("lb/ft3 NaOH", PoundPerCubicFoot * Na2OPerNaOH), ("mol/L NaOH", Na2OPerMole)),
        .. Kind("alkali-share", ("% Na2O", 1), ("% NaOH", Na2OPerNaOH)),
        .. Kind("alkali-flow", ("kg/h Na2O", 1), ("kg/h NaOH", Na2OPerNaOH), ("t/h Na2O", 1000), ("t/h NaOH", 1000 * Na2OPerNaOH)),
        .. Kind("alkali-mass", ("t Na2O", 1), ("t NaOH", Na2OPerNaOH)),
        .. Kind("density", ("kg/m3", 1), ("g/L", 1), ("mg/L", 1e-3), ("lb/ft3", PoundPerCubicFoot), ("lb/gal", Pound / Gallon)),
        .. Kind("amount-concentration", ("mol/L", 1), ("mmol/L", 1e-3)),
        .. Kind("volume-flow", ("m3/h", 1), ("L/min", 0.06), ("L/s", 3.6), ("L/h", 1e-3), ("m3/d", 1.0 / 24), ("gpm", Gallon * 60)),
        .. Kind("mass-flow", ("kg/h", 1), ("t/h", 1000), ("t/d", 1000.0 / 24), ("kg/d", 1.0 / 24), ("kg/min", 60), ("lb/h", Pound),
            ("short ton/h", ShortTon), ("short ton/d", ShortTon / 24)),
        .. Kind("flux", ("m3/m2 h", 1), ("gal/ft2 min", Gallon * 60 / (Foot * Foot))),
        .. Kind("permeability", ("m3/m2 h bar", 1)),
        new Unit("degC", "temperature", 1), new Unit("degF", "temperature", 5.0 / 9, -32 * 5.0 / 9),
        .. Kind("temperature-difference", ("K", 1), ("degF difference", 5.0 / 9)),
        .. Kind("pressure", ("kPa", 1), ("bar", 100), ("mbar", 0.1), ("psi", Psi), ("MPa", 1000)),
        .. Kind("absolute-pressure", ("kPa abs", 1), ("bar abs", 100), ("mbar abs", 0.1), ("psi abs", Psi)),
        .. Kind("share", ("%", 1), ("1", 100)),
        .. Kind("share-difference", ("points", 1)),
        .. Kind("gas", ("ppm", 1)),
        .. Kind("speed-of-turning", ("rpm", 1), ("1/s", 60)),
        .. Kind("rate", ("1/min", 1), ("1/h", 1.0 / 60)),
        .. Kind("speed", ("cm/min", 1), ("m/h", 100.0 / 60), ("mm/min", 0.1)),
        .. Kind("vibration", ("mm/s", 1)),
        .. Kind("current", ("A", 1)),
        .. Kind("power", ("kW", 1)),
        .. Kind("conductivity", ("uS/cm", 1), ("mS/cm", 1000)),
        .. Kind("acidity", ("pH", 1)),
        .. Kind("length", ("m", 1), ("mm", 1e-3), ("cm", 1e-2), ("ft", Foot), ("in", Foot / 12)),
        .. Kind("area", ("m2", 1), ("ft2", Foot * Foot)),
        .. Kind("volume", ("m3", 1), ("L", 1e-3), ("mL", 1e-6), ("gal", Gallon), ("ft3", Foot * Foot * Foot)),
        .. Kind("mass", ("kg", 1), ("g", 1e-3), ("t", 1000), ("lb", Pound), ("short ton", ShortTon)),
        .. Kind("time", ("h", 1), ("min", 1.0 / 60), ("s", 1.0 / 3600), ("d", 24)),
        .. Kind("mass-per-turn", ("kg/rev", 1), ("lb/rev", Pound)),
        .. Kind("heat", ("kJ/kg", 1)),
        .. Kind("heat-per-volume", ("kJ/m3", 1)),
        .. Kind("heat-capacity", ("kJ/kg K", 1)),
        .. Kind("viscosity", ("mPa s", 1)),
        .. Kind("choice", ("choice", 1)),
    ];

    private static IEnumerable<Unit> Kind(string dimension, params (string Name, double Factor)[] units) =>
        units.Select(u => new Unit(u.Name, dimension, u.Factor));
}
