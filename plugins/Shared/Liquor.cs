namespace Logbook.Plugins.Shared;

/// <summary>
/// A clear liquor of hydroxide, hydrosulphide and carbonate, by mass, so that it keeps its make-up when it is heated,
/// cooled or loses water. Density by the mixing model of Laliberte (2009), J. Chem. Eng. Data 54, 1725. Other salts of a
/// mill's liquor are left out: they make it 5 to 15 kg/m3 heavier (common practice, no source), hardly its expansion.
/// </summary>
internal sealed class Liquor
{
    private static readonly Solute Hydroxide = new(319.0205095, 528.5923585, -0.1021978966, 3.504207064e-4, 765.9704702);
    private static readonly Solute Carbonate = new(5.454865435e-7, 1.721549294e-7, -0.08258502073, 1.688229498e-3, 4705.398222);
    private static readonly Solute Hydrosulphide = new(2.422177457e-6, 2.008602919e-6, 0.3529629390, -2.066797399e-3, -4493.991189);

    /// <summary>The model's coefficients as a person would look them up.</summary>
    public const string Coefficients =
        "c0 to c4 of NaOH: 319.0205095, 528.5923585, -0.1021978966, 3.504207064e-4, 765.9704702\n"
        + "of Na2CO3: 5.454865435e-7, 1.721549294e-7, -0.08258502073, 1.688229498e-3, 4705.398222\n"
        + "of NaHS: 2.422177457e-6, 2.008602919e-6, 0.3529629390, -2.066797399e-3, -4493.991189";

    private readonly double _hydroxide;
    private readonly double _hydrosulphide;
    private readonly double _carbonate;
    private readonly double _na2o;

    private Liquor(double hydroxide, double hydrosulphide, double carbonate, double na2o) =>
        (_hydroxide, _hydrosulphide, _carbonate, _na2o) = (hydroxide, hydrosulphide, carbonate, na2o);

    /// <param name="tta">g/L Na2O at <paramref name="celsius"/>.</param>
    /// <param name="sulphidity">Share of the TTA, 0 to 1. Sulphide is counted as hydroxide and hydrosulphide, as it is in solution.</param>
    /// <param name="causticity">Hydroxide in hydroxide and carbonate, 0 to 1.</param>
    /// <param name="celsius">Temperature at which the strength was measured.</param>
    public static Liquor Of(double tta, double sulphidity, double causticity, double celsius)
    {
        var perLitre = tta / MolarMass.Na2O;
        var sulphide = perLitre * sulphidity;
        var rest = perLitre - sulphide;
        var hydroxide = ((2 * rest * causticity) + sulphide) * MolarMass.NaOH;
        var hydrosulphide = sulphide * MolarMass.NaHS;
        var carbonate = rest * (1 - causticity) * MolarMass.Na2CO3;

        // Grams per litre to mass shares needs the density that is sought; each turn shrinks the error about tenfold.
        double before, density = 1000 + tta;
        do
        {
            before = density;
            density = new Liquor(hydroxide / before, hydrosulphide / before, carbonate / before, 0).Density(celsius);
        }
        while (Math.Abs(density - before) > 1e-9);

        return new Liquor(hydroxide / density, hydrosulphide / density, carbonate / density, tta / density);
    }

    /// <summary>The liquor that has this density (kg/m3, not below that of water) at this temperature.</summary>
    public static Liquor OfDensity(double density, double sulphidity, double causticity, double celsius)
    {
        // One gram per litre adds 1.0 to 1.5 kg/m3: stepping by the middle of that always closes in.
        double step, tta = 0;
        do
        {
            step = (density - Of(tta, sulphidity, causticity, celsius).Density(celsius)) / 1.3;
            tta += step;
        }
        while (Math.Abs(step) > 1e-9);

        return Of(tta, sulphidity, causticity, celsius);
    }

    /// <summary>kg/m3.</summary>
    public double Density(double celsius)
    {
        var water = 1 - _hydroxide - _hydrosulphide - _carbonate;
        var volume = (water / Water.Density(celsius))
            + (_hydroxide / Hydroxide.Density(water, celsius))
            + (_hydrosulphide / Hydrosulphide.Density(water, celsius))
            + (_carbonate / Carbonate.Density(water, celsius));
        return 1 / volume;
    }

    /// <summary>Total titratable alkali at a temperature, g/L Na2O: grams stay, the litre changes.</summary>
    public double Tta(double celsius) => _na2o * Density(celsius);

    /// <summary>The same liquor after a share of its mass (0 to 1) has left as steam.</summary>
    public Liquor Evaporated(double share)
    {
        var left = 1 - share;
        return new Liquor(_hydroxide / left, _hydrosulphide / left, _carbonate / left, _na2o / left);
    }

    private sealed record Solute(double C0, double C1, double C2, double C3, double C4)
    {
        public double Density(double water, double t) =>
            ((C0 * (1 - water)) + C1) * Math.Exp(1e-6 * (t + C4) * (t + C4)) / (1 - water + C2 + (C3 * t));
    }
}
