using Logbook.Contracts;
using Logbook.Plugins.GreenLiquor;
using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

/// <summary>
/// The one heat capacity and the one density that the balances take unless told otherwise, against the whole model of
/// Laliberte (2009), J. Chem. Eng. Data 54, 1725, written down here once more. The model's sodium carbonate was measured at
/// 25 degC only, and its hydrosulphide up to 40 degC: above that it is carried further, and is softer than the density.
/// </summary>
public sealed class HeatCapacityTests
{
    private static readonly double[] Hydroxide = [-0.9227807648, -0.04123534625, 1.872252460, -5.942235651, 3.130076178, 0.1410408055];
    private static readonly double[] Carbonate = [-0.5368152125, -0.02716693132, 1.263450230, -9.170500724, 5.655502385, 0.8280134584];
    private static readonly double[] Hydrosulphide = [-0.004315795378, -0.1065136545, 6.616349796, -13.98450854, 0.01597785407, -0.6739148289];

    // kJ/kg K of water by the steam tables (IAPWS-IF97): 4.196 at 80, 4.205 at 90, 4.217 at 100 degC.
    [Theory]
    [InlineData(100, 80, 4.196)]
    [InlineData(110, 90, 4.205)]
    [InlineData(120, 90, 4.205)]
    [InlineData(130, 90, 4.205)]
    [InlineData(140, 100, 4.217)]
    public void One_heat_capacity_serves_from_100_to_140_grams_within_three_per_cent(double tta, double celsius, double water)
    {
        var model = Of(tta, celsius, water);

        Assert.InRange(Default(new FlashCooling(), "heat-capacity") / model, 0.97, 1.03);
        Assert.InRange(Default(new SlakerTemperatureRise(), "heat-capacity") / model, 0.97, 1.03);
    }

    // Golden figure of the same model, computed apart: 3.656 kJ/kg K for 120 g/L at 90 degC.
    [Fact]
    public void The_model_written_down_here_is_the_published_one() => Assert.Equal(3.656, Of(120, 90, 4.205), 0.02);

    // 1130 kg/m3 stands for 120 g/L at 90 degC; 10 g/L more or less is 13 kg/m3, 1.2 %.
    [Theory]
    [InlineData(110, 0.012)]
    [InlineData(120, 0.002)]
    [InlineData(130, 0.013)]
    public void One_density_serves_near_120_grams(double tta, double error) =>
        Assert.InRange(Default(new SlakerTemperatureRise(), "density") / Shared.Liquor.Of(tta, 0.25, 0.15, 90).Density(90), 1 - error, 1 + error);

    private static double Default(ICalculation calculation, string role) => calculation.Info.Inputs.Single(i => i.Role == role).Default!.Value;

    /// <summary>Green liquor of sulphidity 25 % on TTA and causticity 15 %, sulphide as hydroxide and hydrosulphide.</summary>
    private static double Of(double tta, double celsius, double waterHeat)
    {
        var density = Shared.Liquor.Of(tta, 0.25, 0.15, celsius).Density(celsius);
        var moles = tta / 61.97854; // of Na2O in a litre
        var hydroxide = ((2 * moles * 0.75 * 0.15) + (moles * 0.25)) * 39.99677 / density;
        var hydrosulphide = moles * 0.25 * 56.05777 / density;
        var carbonate = moles * 0.75 * 0.85 * 105.98754 / density;
        var water = 1 - hydroxide - hydrosulphide - carbonate;
        return (water * waterHeat) + (hydroxide * Apparent(Hydroxide, water, celsius)) + (hydrosulphide * Apparent(Hydrosulphide, water, celsius))
            + (carbonate * Apparent(Carbonate, water, celsius));
    }

    private static double Apparent(double[] a, double water, double t) =>
        (a[0] * Math.Exp((a[1] * t) + (a[2] * Math.Exp(0.01 * t)) + (a[3] * (1 - water)))) + (a[4] * Math.Pow(1 - water, a[5]));
}
