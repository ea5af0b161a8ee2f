using Logbook.Plugins.GreenLiquor;

namespace Logbook.Plugins.Tests;

/// <summary>
/// Expected values: heat balance with the latent heats of IAPWS-IF97 (library iapws for Python) and densities of Laliberte
/// 2009, worked apart from the program, for green liquor of 120 g/L at 95 degC (density 1128.1 kg/m3, 3.656 kJ/kg K).
/// </summary>
public sealed class FlashCoolingTests
{
    private static readonly FlashCooling Calculation = new();

    [Theory]
    [InlineData(94, 0.00161, 1.81, 120.31, 71.6)]
    [InlineData(90, 0.00800, 9.02, 121.55, 61.6)]
    [InlineData(88, 0.01116, 12.59, 122.16, 57.1)]
    [InlineData(85, 0.01588, 17.92, 123.09, 50.8)]
    public void Cooling_takes_water_and_leaves_the_liquor_stronger(double outlet, double share, double evaporation, double tta, double pressure)
    {
        var values = Trial.Values(Calculation, ("flow", 300), ("inlet", 95), ("outlet", outlet), ("tta", 120), ("density", 1128.1), ("heat-capacity", 3.656));

        Assert.Equal(share, values.Numbers["evaporated-share"], 0.00002);
        Assert.Equal(evaporation, values.Numbers["evaporation"], 0.02);
        Assert.Equal(0.3 * evaporation, values.Numbers["condensate"], 0.006);
        Assert.Equal(tta, values.Numbers["tta-out"], 0.01);
        Assert.Equal(pressure, values.Numbers["vapour-pressure"], 0.4);
    }

    [Fact]
    public void No_cooling_changes_nothing()
    {
        var values = Trial.Values(Calculation, ("flow", 300), ("inlet", 90), ("outlet", 90), ("tta", 120));

        Assert.Equal(0, values.Numbers["condensate"]);
        Assert.Equal(120, values.Numbers["tta-out"], 6);
    }

    [Fact]
    public void A_cooler_that_heats_is_refused() =>
        Assert.Equal("outlet", Trial.Refusal(Calculation, ("flow", 300), ("inlet", 88), ("outlet", 90), ("tta", 120)).Role);

    [Theory]
    [InlineData("vapour-pressure", 70, "air drawn in")]
    [InlineData("condensate", 4, "carried over")]
    [InlineData("condensate", 1, "vacuum side")]
    public void A_reading_that_does_not_fit_is_explained_two_ways(string role, double value, string words) =>
        Assert.Contains(
            Trial.Values(Calculation, ("flow", 300), ("inlet", 95), ("outlet", 90), ("tta", 120), (role, value)).Notes,
            n => n.Contains(words, StringComparison.Ordinal));
}
