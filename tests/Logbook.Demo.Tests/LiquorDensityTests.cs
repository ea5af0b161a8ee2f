using Logbook.Demo.Line;

namespace Logbook.Demo.Tests;

public sealed class LiquorDensityTests
{
    // Perry's handbook tables of densities of aqueous inorganic solutions at 20 degC, 10 % by mass; from memory.
    [Theory]
    [InlineData("NaOH", 1108.9)]
    [InlineData("Na2CO3", 1102.9)]
    public void A_ten_percent_solution_at_20_degC_weighs_what_the_handbook_says(string solute, double handbook)
    {
        var liquor = solute == "NaOH" ? new Liquor(0.1 * handbook / Molar.NaOH, 0, 0) : new Liquor(0, 0, 0.1 * handbook / Molar.Na2CO3);

        Assert.Equal(handbook, LiquorDensity.Of(liquor, 20), tolerance: 1.2);
    }

    // IAPWS-IF97 saturation pressures (International Association for the Properties of Water and Steam, 1997).
    [Theory]
    [InlineData(80, 47.42)]
    [InlineData(90, 70.18)]
    [InlineData(100, 101.42)]
    [InlineData(104, 116.78)]
    public void Water_boils_where_the_steam_table_says(double t, double pressure) =>
        Assert.Equal(pressure, Water.VapourPressure(t), tolerance: 0.004 * pressure);

    // IAPWS-IF97 heats of evaporation.
    [Theory]
    [InlineData(50, 2382.0)]
    [InlineData(80, 2308.1)]
    [InlineData(100, 2256.5)]
    public void Water_takes_the_heat_of_evaporation_of_the_steam_table(double t, double heat) =>
        Assert.Equal(heat, Water.LatentHeat(t), tolerance: 3);

    [Fact]
    public void A_hot_liquor_brought_to_the_laboratory_is_stronger_by_the_ratio_of_its_densities()
    {
        var hot = Liquor.Of(120, 0.25, 0.15);

        var cold = hot.At(90, 25);

        Assert.Equal(LiquorDensity.OfSame(hot, 90, 25) / LiquorDensity.Of(hot, 90), cold.Tta / hot.Tta, tolerance: 1e-9);
        Assert.InRange(cold.Tta / hot.Tta, 1.03, 1.04);
        Assert.Equal(hot.Causticity, cold.Causticity, tolerance: 1e-12);
    }
}
