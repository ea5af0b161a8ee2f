using Logbook.Plugins.Causticizing;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: exact solution of the mass action law, worked apart from the program. The constant itself is from memory.</summary>
public sealed class EquilibriumCausticityTests
{
    private static readonly EquilibriumCausticity Calculation = new();

    [Theory]
    [InlineData(50, 100, 0, 89.63)]
    [InlineData(50, 100, 25, 89.16)]
    [InlineData(50, 120, 25, 87.42)]
    [InlineData(50, 140, 35, 85.23)]
    [InlineData(60, 100, 35, 90.38)]
    [InlineData(60, 120, 25, 89.16)]
    [InlineData(60, 140, 0, 88.27)]
    [InlineData(80, 120, 35, 91.22)]
    [InlineData(80, 140, 25, 90.31)]
    public void Strength_and_sulphidity_set_the_equilibrium(double constant, double tta, double sulphidity, double expected) =>
        Assert.Equal(expected, Trial.Value(Calculation, "equilibrium", ("tta", tta), ("sulphidity-tta", sulphidity), ("constant", constant)), 0.006);

    // Soda without sulphide, boiling: 12 % Na2CO3 reaches 96.8 % (Lunge, Sulphuric Acid and Alkali, from memory). The constant
    // behind a weak liquor is larger: 100 to 150 mol/L from the Pitzer model.
    [Fact]
    public void Weak_soda_comes_near_the_old_tables() =>
        Assert.InRange(Trial.Value(Calculation, "equilibrium", ("tta", 79), ("sulphidity-tta", 0), ("constant", 120)), 95, 98);

    [Theory]
    [InlineData(82, "")]
    [InlineData(87.3, "below equilibrium")]
    [InlineData(90, "cannot be")]
    public void The_distance_is_judged(double reached, string words)
    {
        var values = Trial.Values(Calculation, ("tta", 120), ("sulphidity-tta", 25), ("causticity", reached));

        Assert.Equal(values.Numbers["equilibrium"] - reached, values.Numbers["distance"], 9);
        Assert.Equal(words.Length > 0, values.Notes.Any(n => n.Contains(words, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_liquor_that_cannot_causticize_is_refused() =>
        Assert.Equal("sulphidity-tta", Trial.Refusal(Calculation, ("tta", 250), ("sulphidity-tta", 95), ("constant", 5)).Role);
}
