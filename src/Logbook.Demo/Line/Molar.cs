namespace Logbook.Demo.Line;

/// <summary>Molar masses, g/mol, from the IUPAC conventional atomic weights (H 1.008, C 12.011, O 15.999, Na 22.98976928, S 32.06, Ca 40.078).</summary>
internal static class Molar
{
    public const double NaOH = 39.99677;
    public const double NaHS = 56.05777;
    public const double Na2CO3 = 105.98754;
    public const double Na2O = 61.97854;
    public const double CaO = 56.077;
    public const double CaOH2 = 74.092;
    public const double CaCO3 = 100.086;
    public const double Water = 18.015;
}
