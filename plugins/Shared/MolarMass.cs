namespace Logbook.Plugins.Shared;

/// <summary>
/// Molar masses in g/mol from the IUPAC conventional atomic weights, and the ratios between them that the line's
/// balances use. Computed, never typed rounded, so that what goes in comes out.
/// </summary>
internal static class MolarMass
{
    private const double H = 1.008;
    private const double C = 12.011;
    private const double O = 15.999;
    private const double Na = 22.98976928;
    private const double S = 32.06;
    private const double Ca = 40.078;

    public const double NaOH = Na + O + H;
    public const double Na2O = (2 * Na) + O;
    public const double Na2S = (2 * Na) + S;
    public const double NaHS = Na + H + S;
    public const double Na2CO3 = (2 * Na) + C + (3 * O);
    public const double Na2SO4 = (2 * Na) + S + (4 * O);
    public const double Na2SO3 = (2 * Na) + S + (3 * O);
    public const double Na2S2O3 = (2 * Na) + (2 * S) + (3 * O);
    public const double CaO = Ca + O;
    public const double CalciumHydroxide = Ca + (2 * (O + H));
    public const double CaCO3 = Ca + C + (3 * O);

    /// <summary>Grams of Na2O per mole of acid.</summary>
    public const double Na2OPerEquivalent = Na2O / 2;

    /// <summary>Kilograms of CaO that turn one kilogram of carbonate (as Na2O) into hydroxide: one mole for one mole.</summary>
    public const double CaOPerNa2O = CaO / Na2O;

    public const double CaCO3PerCaO = CaCO3 / CaO;
    public const double CalciumHydroxidePerCaO = CalciumHydroxide / CaO;
    public const double CaOPerCaCO3 = CaO / CaCO3;
}
