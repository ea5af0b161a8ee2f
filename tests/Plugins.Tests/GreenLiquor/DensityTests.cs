using Logbook.Plugins.GreenLiquor;
using Logbook.Plugins.WeakWash;

namespace Logbook.Plugins.Tests;

/// <summary>
/// Expected values: densities computed apart from the program with the equations and coefficients of Laliberte 2009,
/// J. Chem. Eng. Data 54, 1725, to 0.1 kg/m3, which is 0.08 g/L.
/// </summary>
public sealed class DensityTests
{
    [Theory]
    [InlineData(1131.5, 90, 120)]
    [InlineData(1118.5, 90, 110)]
    [InlineData(1138.0, 80, 120)]
    [InlineData(1098.6, 100, 100)]
    public void Green_liquor_density_gives_its_strength(double density, double celsius, double expected) =>
        Assert.Equal(expected, Trial.Value(new GreenLiquorDensity(), "tta", ("density", density), ("temperature", celsius)), 0.08);

    // A fit to the same model between 60 and 100 degC, good to 0.9 kg/m3 or 0.7 g/L.
    [Theory]
    [InlineData(1131.5, 90, 119.84)]
    [InlineData(1125.0, 85, 112.13)]
    [InlineData(1118.5, 90, 109.71)]
    public void Green_liquor_density_stays_near_the_straight_line_fit(double density, double celsius, double expected) =>
        Assert.Equal(expected, Trial.Value(new GreenLiquorDensity(), "tta", ("density", density), ("temperature", celsius)), 0.7);

    [Fact]
    public void The_laboratory_finds_hot_green_liquor_stronger() =>
        Assert.Equal(124.25, Trial.Value(new GreenLiquorDensity(), "tta-25", ("density", 1131.5), ("temperature", 90)), 0.08);

    [Fact]
    public void The_mills_own_salts_are_taken_off() =>
        Assert.Equal(120, Trial.Value(new GreenLiquorDensity(), "tta", ("density", 1141.5), ("temperature", 90), ("offset", 10)), 0.08);

    [Theory]
    [InlineData(991.6, 70, 10)]
    [InlineData(1005.2, 70, 20)]
    [InlineData(1018.4, 70, 30)]
    public void Weak_wash_density_gives_its_strength(double density, double celsius, double expected) =>
        Assert.Equal(expected, Trial.Value(new WeakWashDensity(), "tta", ("density", density), ("temperature", celsius)), 0.05);

    // density ratio 25 to 70 degC: 1.0205
    [Fact]
    public void The_laboratory_finds_warm_weak_wash_stronger()
    {
        var values = Trial.Values(new WeakWashDensity(), ("density", 1005.2), ("temperature", 70));

        Assert.Equal(1.0205, values.Numbers["tta-25"] / values.Numbers["tta"], 4);
    }

    [Fact]
    public void Liquor_lighter_than_water_is_refused()
    {
        Assert.Equal("density", Trial.Refusal(new GreenLiquorDensity(), ("density", 960), ("temperature", 90)).Role);
        Assert.Equal("density", Trial.Refusal(new WeakWashDensity(), ("density", 970), ("temperature", 70)).Role);
    }

    [Fact]
    public void A_strength_far_from_usual_is_explained_two_ways()
    {
        Assert.Contains(Trial.Values(new GreenLiquorDensity(), ("density", 1060), ("temperature", 90)).Notes, n => n.Contains("density cell", StringComparison.Ordinal));
        Assert.Contains(Trial.Values(new WeakWashDensity(), ("density", 1050), ("temperature", 70)).Notes, n => n.Contains("solids", StringComparison.Ordinal));
    }

    [Fact]
    public void Density_is_no_witness_until_the_site_gives_its_offset() =>
        Assert.All(
            new[] { new GreenLiquorDensity().Info, new WeakWashDensity().Info },
            info => Assert.Equal("offset", Assert.Single(info.Outputs.Single(o => o.Estimates is not null).NeedsFitted)));
}
