using Logbook.Plugins.Laboratory;

namespace Logbook.Plugins.Tests;

/// <summary>
/// Expected values: constructed end points, exact by the stoichiometry of the three-end-point titration, computed from
/// IUPAC atomic weights.
/// </summary>
public sealed class CausticityTests
{
    private static readonly Causticity Calculation = new();

    [Theory]
    [InlineData(29.0, 34.2, 39.4, 82.069)] // white liquor
    [InlineData(9.4, 14.2, 38.6, 15.862)] // green liquor
    [InlineData(24.0, 28.3, 32.4, 82.773)] // weak wash
    [InlineData(29.4869, 33.9718, 38.1233, 85.760)] // 100 g/L NaOH, 35 g/L Na2S, 22 g/L Na2CO3
    [InlineData(29.3667, 34.3273, 39.6847, 82.000)] // 82 % by construction
    public void Three_end_points_give_the_causticity(double a, double b, double c, double expected) =>
        Assert.Equal(expected, Trial.Value(Calculation, "causticity", ("a", a), ("b", b), ("c", c)), 3);

    [Fact]
    public void White_liquor_corrected_for_the_green_liquors_hydroxide_is_lower()
    {
        var values = Trial.Values(Calculation, ("a", 29.0), ("b", 34.2), ("c", 39.4), ("acid", 0.5), ("sample", 5), ("gl-naoh", 14.255), ("gl-tta", 119.619));

        Assert.Equal(78.605, values.Numbers["corrected-causticity"], 3); // (73.754 - 14.551) / (73.754 - 14.551 + 16.114)
    }

    [Fact]
    public void Acid_strength_and_sample_volume_fall_out_of_the_causticity()
    {
        var weak = Trial.Value(Calculation, "causticity", ("a", 28.4), ("b", 33.1), ("c", 39.0), ("acid", 0.1), ("sample", 1));
        var strong = Trial.Value(Calculation, "causticity", ("a", 28.4), ("b", 33.1), ("c", 39.0), ("acid", 1), ("sample", 10));

        Assert.Equal(weak, strong, 12);
        Assert.Equal(80.067568, weak, 6); // 100 (2A - B) / (2A - B + C - B), by hand
    }

    [Theory]
    [InlineData(34.2, 29.0, 39.4, "b")]
    [InlineData(29.0, 39.4, 34.2, "c")]
    [InlineData(15.0, 34.2, 39.4, "b")]
    [InlineData(0, 0, 0, "a")]
    [InlineData(10, 20, 20, "c")]
    public void End_points_that_cannot_be_are_refused_by_role(double a, double b, double c, string role) =>
        Assert.Equal(role, Trial.Refusal(Calculation, ("a", a), ("b", b), ("c", c)).Role);

    [Fact]
    public void Hydroxide_above_the_total_of_the_green_liquor_is_refused() =>
        Assert.Equal("gl-naoh", Trial.Refusal(Calculation, ("a", 29), ("b", 34), ("c", 39), ("gl-naoh", 50), ("gl-tta", 40)).Role);

    [Fact]
    public void A_half_given_correction_says_what_is_missing()
    {
        var values = Trial.Values(Calculation, ("a", 29), ("b", 34), ("c", 39), ("acid", 0.5), ("gl-tta", 120));

        Assert.False(values.Numbers.ContainsKey("corrected-causticity"));
        Assert.Contains(values.Notes, n => n.Contains("sample, gl-naoh", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(38.0, 39.0, 41.0, "overdosed")]
    [InlineData(26.0, 34.0, 46.0, "low for finished white liquor")]
    public void An_unusual_causticity_is_explained_two_ways(double a, double b, double c, string words) =>
        Assert.Contains(Trial.Values(Calculation, ("a", a), ("b", b), ("c", c)).Notes, n => n.Contains(words, StringComparison.Ordinal));
}
