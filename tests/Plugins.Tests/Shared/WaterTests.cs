using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Tests;

public sealed class WaterTests
{
    // Verification values of IAPWS-IF97 (2007 revision), tables 35 and 36; kelvin and MPa there.
    [Theory]
    [InlineData(300, 0.353658941e-2)]
    [InlineData(500, 0.263889776e1)]
    [InlineData(600, 0.123443146e2)]
    public void Vapour_pressure_meets_the_published_verification_values(double kelvin, double megapascal) =>
        Assert.Equal(1, Water.SaturationPressure(kelvin - 273.15) / 1000 / megapascal, 8);

    [Theory]
    [InlineData(0.1, 372.755919)]
    [InlineData(1, 453.035632)]
    [InlineData(10, 584.149488)]
    public void Boiling_point_meets_the_published_verification_values(double megapascal, double kelvin) =>
        Assert.Equal(kelvin, Water.SaturationTemperature(megapascal * 1000) + 273.15, 6);

    // Latent heat from IAPWS-IF97 (the library iapws for Python): 2382.0 at 50, 2333.1 at 70, 2282.6 at 90, 2256.5 at 100 degC.
    [Theory]
    [InlineData(50, 2382.0)]
    [InlineData(60, 2357.7)]
    [InlineData(70, 2333.1)]
    [InlineData(80, 2308.1)]
    [InlineData(90, 2282.6)]
    [InlineData(100, 2256.5)]
    [InlineData(104, 2245.9)]
    public void Latent_heat_stays_within_three_kilojoules_of_the_steam_tables(double celsius, double expected) =>
        Assert.InRange(Water.LatentHeat(celsius), expected - 3, expected + 3);

    // ISO 2533 standard atmosphere: 89.875 kPa at 1000 m, 79.495 at 2000 m, 70.109 at 3000 m.
    [Theory]
    [InlineData(0, 101.325)]
    [InlineData(1000, 89.875)]
    [InlineData(2000, 79.495)]
    [InlineData(3000, 70.109)]
    public void Air_pressure_follows_the_standard_atmosphere(double metres, double kilopascal) =>
        Assert.Equal(kilopascal, Water.AirPressure(metres), 0.01);

    // Water at one atmosphere: 998.207 at 20, 983.20 at 60, 958.36 at 100 degC (equation of Laliberte 2009; IAPWS agrees to 0.05).
    [Theory]
    [InlineData(20, 998.21)]
    [InlineData(60, 983.20)]
    [InlineData(100, 958.36)]
    public void Density_of_water(double celsius, double expected) => Assert.Equal(expected, Water.Density(celsius), 0.05);
}
