using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: computed from IUPAC atomic weights; 54.558 kg CaO take liquor of 120 g/L from 15 to 82 %.</summary>
public sealed class LimeFromCausticityTests
{
    private static readonly LimeFromCausticity Calculation = new();

    [Fact]
    public void The_causticity_reached_tells_the_lime_that_reacted() =>
        Assert.Equal(54.558, Trial.Value(Calculation, "cao-dose", ("tta", 120), ("sulphidity-tta", 25), ("gl-causticity", 15), ("causticity", 82)), 3);

    // Computed: 0.90478 x 120 x 0.75 / 100 for a point of causticity, 0.90478 x 0.75 x 0.67 for a g/L.
    [Theory]
    [InlineData(120, 83, 0.814)]
    [InlineData(121, 82, 0.455)]
    public void A_point_or_a_gram_moves_it_as_computed(double tta, double causticity, double step) =>
        Assert.Equal(54.558 + step, Trial.Value(Calculation, "cao-dose", ("tta", tta), ("sulphidity-tta", 25), ("gl-causticity", 15), ("causticity", causticity)), 2);

    [Fact]
    public void Less_than_the_green_liquor_had_is_refused() =>
        Assert.Equal("causticity", Trial.Refusal(Calculation, ("tta", 120), ("sulphidity-tta", 25), ("gl-causticity", 15), ("causticity", 10)).Role);
}
