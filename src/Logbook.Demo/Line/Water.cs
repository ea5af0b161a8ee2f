namespace Logbook.Demo.Line;

/// <summary>Water between 0 and 110 degC.</summary>
internal static class Water
{
    /// <summary>kg/m3; the polynomial that Laliberté's density model takes for water (J. Chem. Eng. Data 49, 1141, 2004).</summary>
    public static double Density(double t) =>
        (((((((((-2.8054253e-10 * t) + 1.0556302e-7) * t) - 4.6170461e-5) * t) - 0.0079870401) * t + 16.945176) * t) + 999.83952)
        / (1 + (0.01687985 * t));

    /// <summary>kPa absolute; Antoine's equation with the coefficients for 1 to 100 degC, from memory of the usual tables; within 0.4 % up to 105 degC.</summary>
    public static double VapourPressure(double t) => 0.1333224 * Math.Pow(10, 8.07131 - (1730.63 / (233.426 + t)));

    /// <summary>kJ/kg; a straight line through the IF97 values between 50 and 105 degC, within 3 kJ/kg.</summary>
    public static double LatentHeat(double t) => 2507.9 - (2.500 * t);
}
