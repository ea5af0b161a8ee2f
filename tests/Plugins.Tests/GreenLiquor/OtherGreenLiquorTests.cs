using Logbook.Plugins.GreenLiquor;

namespace Logbook.Plugins.Tests;

public sealed class OtherGreenLiquorTests
{
    private static readonly (string, double)[] Filter = [("flow", 90), ("area", 300), ("pressure-difference", 1), ("temperature", 90)];

    // Soda balance worked by hand: 300 (124 - 120) / (120 - 20); density slope 1.29 by Laliberte 2009.
    [Fact]
    public void Too_strong_liquor_asks_for_weak_wash()
    {
        var values = Trial.Values(new DissolvingTankTrim(), ("tta", 124), ("target-tta", 120), ("weak-wash-tta", 20), ("flow", 300));

        Assert.Equal(12, values.Numbers["weak-wash-change"], 9);
        Assert.Equal(-5.16, values.Numbers["density-change"], 9);
    }

    [Fact]
    public void The_change_brings_the_soda_to_the_target()
    {
        var change = Trial.Value(new DissolvingTankTrim(), "weak-wash-change", ("tta", 112), ("target-tta", 120), ("weak-wash-tta", 18), ("flow", 280));

        Assert.Equal(120, ((280 * 112) + (change * 18)) / (280 + change), 9);
    }

    [Theory]
    [InlineData(124, 120, 130, "weak-wash-tta")]
    [InlineData(15, 120, 20, "tta")]
    public void Weak_wash_that_is_not_weak_is_refused(double tta, double target, double weak, string role) =>
        Assert.Equal(role, Trial.Refusal(new DissolvingTankTrim(), ("tta", tta), ("target-tta", target), ("weak-wash-tta", weak), ("flow", 300)).Role);

    // Darcy's law by hand; viscosities 0.75, 0.86, 1.21 mPa s at 90, 80, 60 degC from the model of Laliberte.
    [Theory]
    [InlineData(90, 0.300)]
    [InlineData(80, 0.300 * 0.86 / 0.75)]
    [InlineData(60, 0.300 * 1.21 / 0.75)]
    public void Permeability_is_brought_to_one_temperature(double celsius, double expected)
    {
        var values = Trial.Values(new FilterPermeability(), ("flow", 90), ("area", 300), ("pressure-difference", 1), ("temperature", celsius));

        Assert.Equal(0.3, values.Numbers["flux"], 9);
        Assert.Equal(expected, values.Numbers["permeability"], 0.001);
    }

    [Theory]
    [InlineData(0.6, 50, "fouled")]
    [InlineData(0.2, 150, "leak")]
    public void An_unusual_filter_is_explained_two_ways(double clean, double relative, string words)
    {
        var values = Trial.Values(new FilterPermeability(), [.. Filter, ("clean-permeability", clean)]);

        Assert.Equal(relative, values.Numbers["relative"], 6);
        Assert.Contains(values.Notes, n => n.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_filter_without_pressure_is_refused() =>
        Assert.Equal("pressure-difference", Trial.Refusal(new FilterPermeability(), ("flow", 90), ("area", 300), ("pressure-difference", 0), ("temperature", 90)).Role);
}
