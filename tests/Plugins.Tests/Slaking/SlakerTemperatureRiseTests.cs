using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

/// <summary>
/// Expected values: the heat balance worked by hand with the CRC Handbook's heats of formation (CaO -634.9, Ca(OH)2 -985.2,
/// water -285.8 kJ/mol: 64.5 kJ/mol, 1150 kJ/kg CaO). Evaporation, loss and dilution are common practice, no source.
/// </summary>
public sealed class SlakerTemperatureRiseTests
{
    private const double Dose = 54.5583;
    private static readonly SlakerTemperatureRise Calculation = new();

    [Theory]
    [InlineData(0, 104.609)]
    [InlineData(8, 100.30)]
    public void A_dose_gives_the_slaker_temperature(double evaporation, double expected) =>
        Assert.Equal(expected, Trial.Value(Calculation, "expected-temperature", ("gl-temperature", 90), ("cao-dose", Dose), ("evaporation", evaporation)), 2);

    [Theory]
    [InlineData(40, 10.75)]
    [InlineData(45, 12.08)]
    [InlineData(50, 13.40)]
    [InlineData(55, 14.73)]
    [InlineData(60, 16.04)]
    public void Each_kilogram_of_lime_adds_a_quarter_of_a_kelvin(double dose, double rise) =>
        Assert.Equal(rise, Trial.Value(Calculation, "expected-rise", ("gl-temperature", 90), ("cao-dose", dose)), 2);

    [Fact]
    public void A_rise_tells_the_dose()
    {
        var values = Trial.Values(Calculation, ("gl-temperature", 90), ("slaker-temperature", 102), ("cao-dose", 54.87), ("evaporation", 5));

        Assert.Equal(54.87, values.Numbers["cao-from-rise"], 2);
        Assert.Equal(12.0, values.Numbers["observed-rise"], 9);
    }

    [Fact]
    public void The_rise_read_back_gives_the_dose_that_made_it()
    {
        (string, double)[] given = [("gl-temperature", 88), ("cao-dose", 51), ("evaporation", 6), ("loss", 2000), ("dilution", 30), ("dilution-temperature", 55)];

        var expected = Trial.Value(Calculation, "expected-temperature", given);
        var back = Trial.Value(Calculation, "cao-from-rise", [.. given, ("slaker-temperature", expected)]);

        Assert.Equal(51, back, 9);
    }

    [Fact]
    public void Water_added_colder_than_the_slaker_cools_it()
    {
        var without = Trial.Value(Calculation, "expected-temperature", ("gl-temperature", 90), ("cao-dose", Dose));
        var with = Trial.Value(Calculation, "expected-temperature", ("gl-temperature", 90), ("cao-dose", Dose), ("dilution", 20));

        // (4180.3 x 104.609 + 84.2 x 60) / (4180.3 + 84.2), worked by hand
        Assert.Equal(104.609, without, 3);
        Assert.Equal(103.728, with, 3);
    }

    [Theory]
    [InlineData(104, 40, "hotter")]
    [InlineData(95, 54, "colder")]
    [InlineData(89, 54, "no lime is slaking")]
    public void A_slaker_that_does_not_fit_its_dose_is_explained(double read, double dose, string words) =>
        Assert.Contains(
            Trial.Values(Calculation, ("gl-temperature", 90), ("slaker-temperature", read), ("cao-dose", dose)).Notes,
            n => n.Contains(words, StringComparison.Ordinal));
}
