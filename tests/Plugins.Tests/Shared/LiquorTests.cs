using CsCheck;
using Logbook.Plugins.Shared;

namespace Logbook.Plugins.Tests;

public sealed class LiquorTests
{
    // Computed independently with the equations and coefficients of Laliberte (2009), J. Chem. Eng. Data 54, 1725, to 0.1 kg/m3.
    [Theory]
    [InlineData(120, 0.25, 0.15, 20, 1167.9)]
    [InlineData(100, 0.25, 0.15, 80, 1112.1)]
    [InlineData(120, 0.25, 0.15, 90, 1131.5)]
    [InlineData(140, 0.25, 0.15, 100, 1150.1)]
    [InlineData(20, 0.25, 0.15, 90, 995.2)]
    [InlineData(120, 0.25, 0.82, 20, 1149.2)]
    [InlineData(120, 0.25, 0.82, 90, 1111.6)]
    [InlineData(140, 0.25, 0.82, 100, 1125.4)]
    public void Density_follows_the_published_mixing_model(double tta, double sulphidity, double causticity, double celsius, double expected) =>
        Assert.Equal(expected, Liquor.Of(tta, sulphidity, causticity, celsius).Density(celsius), 0.06);

    // Handbook densities at 20 degC, from memory of Perry and of the CRC Handbook: NaOH 10 % 1108.9, Na2CO3 10 % 1102.9 kg/m3.
    [Theory]
    [InlineData(0.10 * 1108.9 / 39.99677 * 61.97854 / 2, 1, 1108.9)]
    [InlineData(0.10 * 1102.9 / 105.98754 * 61.97854, 0, 1102.9)]
    public void Pure_solutions_agree_with_the_handbooks(double tta, double causticity, double expected) =>
        Assert.Equal(expected, Liquor.Of(tta, 0, causticity, 20).Density(20), 1.0);

    // Density ratios 25 degC to hot, same model: 1.0354 for green liquor 90, 1.0447 for white 100, 1.0205 for weak wash 70 degC.
    [Theory]
    [InlineData(120, 0.15, 90, 124.25)]
    [InlineData(122.98, 0.82, 100, 128.48)]
    [InlineData(20, 0.80, 70, 20.41)]
    public void Hot_liquor_reads_stronger_in_a_cold_laboratory(double tta, double causticity, double celsius, double cold) =>
        Assert.Equal(cold, Liquor.Of(tta, 0.25, causticity, celsius).Tta(25), 0.01);

    [Fact]
    public void A_density_gives_back_the_strength_that_made_it() =>
        Gen.Select(Gen.Double[0, 180], Gen.Double[0.05, 0.45], Gen.Double[0.05, 0.95], Gen.Double[20, 100]).Sample((tta, s, c, t) =>
        {
            var density = Liquor.Of(tta, s, c, t).Density(t);
            Assert.Equal(tta, Liquor.OfDensity(density, s, c, t).Tta(t), 1e-6);
        });

    [Fact]
    public void A_change_of_temperature_and_back_changes_nothing() =>
        Gen.Select(Gen.Double[5, 160], Gen.Double[20, 100], Gen.Double[20, 100]).Sample((tta, from, to) =>
        {
            var there = Liquor.Of(tta, 0.3, 0.5, from).Tta(to);
            Assert.Equal(tta, Liquor.Of(there, 0.3, 0.5, to).Tta(from), 1e-6);
        });
}
