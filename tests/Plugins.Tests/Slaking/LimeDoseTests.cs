using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: one mole of CaO for one of Na2CO3, computed from IUPAC atomic weights.</summary>
public sealed class LimeDoseTests
{
    private static readonly LimeDose Calculation = new();

    [Theory]
    [InlineData(120, 25, 15, 82, 88, 54.558, 61.998, 0.7882)]
    [InlineData(115, 28, 12, 80, 90, 50.943, 56.603, 0.7727)]
    [InlineData(125, 30, 18, 83, 85, 51.459, 60.540, 0.7927)]
    public void A_target_asks_for_lime(double tta, double sulphidity, double green, double target, double available, double cao, double lime, double ratio)
    {
        var values = Trial.Values(Calculation, ("tta", tta), ("sulphidity-tta", sulphidity), ("gl-causticity", green),
            ("target-causticity", target), ("available-cao", available), ("flow", 300));

        Assert.Equal(cao, values.Numbers["cao-needed"], 3);
        Assert.Equal(lime, values.Numbers["lime-needed"], 3);
        Assert.Equal(ratio, values.Numbers["liming-ratio"], 4);
        Assert.Equal(lime * 0.3, values.Numbers["lime-feed"], 3);
    }

    [Fact]
    public void Without_a_flow_there_is_no_feed() =>
        Assert.False(Trial.Values(Calculation, ("tta", 120), ("sulphidity-tta", 25), ("gl-causticity", 15), ("target-causticity", 82), ("available-cao", 88))
            .Numbers.ContainsKey("lime-feed"));

    // Green liquor of 124.25 g/L at 25 degC is 120 g/L at 90 degC: density ratio 1.0354 by Laliberte 2009, J. Chem. Eng. Data 54, 1725.
    [Fact]
    public void A_laboratory_strength_is_brought_to_the_flows_temperature() =>
        Assert.Equal(54.558, Trial.Value(Calculation, "cao-needed", ("tta", 124.25), ("tta-temperature", 25), ("flow-temperature", 90),
            ("sulphidity-tta", 25), ("gl-causticity", 15), ("target-causticity", 82), ("available-cao", 88)), 0.005);

    [Fact]
    public void A_half_given_temperature_is_said() =>
        Assert.Contains(
            Trial.Values(Calculation, ("tta", 124.25), ("tta-temperature", 25), ("sulphidity-tta", 25), ("gl-causticity", 15), ("target-causticity", 82), ("available-cao", 88)).Notes,
            n => n.Contains("flow-temperature", StringComparison.Ordinal));

    [Fact]
    public void A_target_below_the_green_liquor_is_refused() =>
        Assert.Equal("target-causticity", Trial.Refusal(Calculation, ("tta", 120), ("sulphidity-tta", 25), ("gl-causticity", 15), ("target-causticity", 12), ("available-cao", 88)).Role);

    [Fact]
    public void A_target_beyond_the_equilibrium_warns_of_free_lime() =>
        Assert.Contains(
            Trial.Values(Calculation, ("tta", 120), ("sulphidity-tta", 25), ("gl-causticity", 15), ("target-causticity", 93), ("available-cao", 88)).Notes,
            n => n.Contains("free lime", StringComparison.Ordinal));
}
