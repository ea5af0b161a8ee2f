using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: mass balance worked by hand. The usual share, 0.5 to 2 %, is common practice, no source.</summary>
public sealed class GritsRateTests
{
    private static readonly GritsRate Calculation = new();

    [Fact]
    public void Grits_of_a_shift_become_a_rate_and_a_share_of_the_lime()
    {
        var values = Trial.Values(Calculation, ("grits", 1860), ("period", 8), ("dry-solids", 80), ("lime", 18.6));

        Assert.Equal(186, values.Numbers["rate"], 9);
        Assert.Equal(1.0, values.Numbers["share"], 9);
        Assert.Empty(values.Notes);
    }

    [Theory]
    [InlineData(700, "high")]
    [InlineData(450, "upper end")]
    [InlineData(20, "Hardly any grits")]
    public void An_unusual_share_is_explained_two_ways(double grits, string words) =>
        Assert.Contains(Trial.Values(Calculation, ("grits", grits), ("period", 1), ("lime", 18.6)).Notes, n => n.Contains(words, StringComparison.Ordinal));

    [Fact]
    public void A_share_of_no_lime_is_refused() =>
        Assert.Equal("lime", Trial.Refusal(Calculation, ("grits", 100), ("period", 1), ("lime", 0)).Role);

    [Fact]
    public void More_grits_than_lime_are_refused() =>
        Assert.Equal("grits", Trial.Refusal(Calculation, ("grits", 20_000), ("period", 1), ("lime", 18.6)).Role);
}
