using System.Runtime.InteropServices;

namespace Logbook.Demo.Line;

/// <summary>What is dissolved, kmol/m3, all sulphide written as Na2S.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Liquor(double NaOH, double Na2S, double Na2CO3)
{
    /// <summary>Total titratable alkali, g/L as Na2O.</summary>
    public double Tta => ((NaOH / 2) + Na2S + Na2CO3) * Molar.Na2O;

    /// <summary>Share of the total titratable alkali that is sulphide, 0 to 1.</summary>
    public double SulphidityTta => Na2S * Molar.Na2O / Tta;

    /// <summary>Share of hydroxide and carbonate that is hydroxide, 0 to 1.</summary>
    public double Causticity => NaOH / (NaOH + (2 * Na2CO3));

    /// <summary>From strength (g/L as Na2O), sulphidity on it and causticity (both 0 to 1).</summary>
    public static Liquor Of(double tta, double sulphidity, double causticity)
    {
        var total = tta / Molar.Na2O;
        var rest = total * (1 - sulphidity);
        return new Liquor(2 * rest * causticity, total * sulphidity, rest * (1 - causticity));
    }

    public static Liquor operator *(Liquor a, double factor) => new(a.NaOH * factor, a.Na2S * factor, a.Na2CO3 * factor);

    public static Liquor operator +(Liquor a, Liquor b) => new(a.NaOH + b.NaOH, a.Na2S + b.Na2S, a.Na2CO3 + b.Na2CO3);

    public static Liquor operator -(Liquor a, Liquor b) => a + (b * -1);

    /// <summary>The same liquor counted in cubic metres of another temperature: it swells, the strength a litre falls.</summary>
    public Liquor At(double from, double to) => this * (LiquorDensity.OfSame(this, from, to) / LiquorDensity.Of(this, from));
}
