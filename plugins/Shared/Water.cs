namespace Logbook.Plugins.Shared;

/// <summary>Water and its steam: the small part of the published formulations that the line needs.</summary>
internal static class Water
{
    /// <summary>Pressure of a standard atmosphere at sea level, kPa.</summary>
    public const double StandardPressure = 101.325;

    private const double Kelvin = 273.15;

    // IAPWS-IF97 region 4, n1 to n10; checked in the tests against the verification values of its tables 35 and 36.
    private const double N1 = 0.11670521452767e4;
    private const double N2 = -0.72421316703206e6;
    private const double N3 = -0.17073846940092e2;
    private const double N4 = 0.12020824702470e5;
    private const double N5 = -0.32325550322333e7;
    private const double N6 = 0.14915108613530e2;
    private const double N7 = -0.48232657361591e4;
    private const double N8 = 0.40511340542057e6;
    private const double N9 = -0.23855557567849;
    private const double N10 = 0.65017534844798e3;

    /// <summary>Vapour pressure in kPa at <paramref name="celsius"/> (IAPWS-IF97 equation 30).</summary>
    public static double SaturationPressure(double celsius)
    {
        var t = celsius + Kelvin;
        var v = t + (N9 / (t - N10));
        var a = (v * v) + (N1 * v) + N2;
        var b = (N3 * v * v) + (N4 * v) + N5;
        var c = (N6 * v * v) + (N7 * v) + N8;
        return 1000 * Math.Pow(2 * c / (-b + Math.Sqrt((b * b) - (4 * a * c))), 4);
    }

    /// <summary>Boiling point of water in degC under <paramref name="kilopascal"/> (IAPWS-IF97 equation 31).</summary>
    public static double SaturationTemperature(double kilopascal)
    {
        var beta = Math.Pow(kilopascal / 1000, 0.25);
        var e = (beta * beta) + (N3 * beta) + N6;
        var f = (N1 * beta * beta) + (N4 * beta) + N7;
        var g = (N2 * beta * beta) + (N5 * beta) + N8;
        var d = 2 * g / (-f - Math.Sqrt((f * f) - (4 * e * g)));
        var s = N10 + d;
        return ((s - Math.Sqrt((s * s) - (4 * (N9 + (N10 * d))))) / 2) - Kelvin;
    }

    /// <summary>Latent heat in kJ/kg, a straight line through the steam tables: within 3 kJ/kg from 50 to 105 degC.</summary>
    public static double LatentHeat(double celsius) => 2507.9 - (2.500 * celsius);

    /// <summary>Pressure of the standard atmosphere in kPa at <paramref name="metres"/> above the sea (ISO 2533).</summary>
    public static double AirPressure(double metres) => StandardPressure * Math.Pow(1 - (2.25577e-5 * metres), 5.25588);

    /// <summary>Density in kg/m3 at one atmosphere, as the density model of Laliberte (2009) takes it.</summary>
    public static double Density(double celsius)
    {
        var t = celsius;
        var top = ((((((-2.8054253e-10 * t) + 1.0556302e-7) * t) - 4.6170461e-5) * t) - 0.0079870401) * t;
        return (((top + 16.945176) * t) + 999.83952) / (1 + (0.01687985 * t));
    }
}
