using Logbook.Plugins.Dregs;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: mass balances worked by hand.</summary>
public sealed class DregsTests
{
    private static readonly (string, double)[] Filter = [("flow", 300), ("raw-dregs", 1030), ("filtrate-dregs", 30)];

    [Fact]
    public void Dregs_are_counted_at_three_places()
    {
        var values = Trial.Values(new DregsBalance(), [.. Filter, ("concentrate-flow", 12), ("concentrate-solids", 25), ("cake", 16), ("cake-solids", 45)]);

        Assert.Equal(300, values.Numbers["from-filter"], 9);
        Assert.Equal(300, values.Numbers["from-concentrate"], 9);
        Assert.Equal(300, values.Numbers["from-cake"], 9);
        Assert.Empty(values.Notes);
    }

    [Fact]
    public void Dregs_that_part_are_explained_two_ways() =>
        Assert.Contains(Trial.Values(new DregsBalance(), [.. Filter, ("cake", 8), ("cake-solids", 45)]).Notes, n => n.Contains("pile up", StringComparison.Ordinal));

    [Fact]
    public void A_half_given_place_is_left_out_with_a_word()
    {
        var values = Trial.Values(new DregsBalance(), [.. Filter, ("cake", 8), ("concentrate-flow", 12)]);

        Assert.Equal("from-filter", Assert.Single(values.Numbers).Key);
        Assert.Equal(2, values.Notes.Count);
    }

    [Fact]
    public void A_filter_that_adds_dregs_is_refused() =>
        Assert.Equal("filtrate-dregs", Trial.Refusal(new DregsBalance(), ("flow", 300), ("raw-dregs", 30), ("filtrate-dregs", 1030)).Role);

    [Theory]
    [InlineData(75, 2.0, 980, 0.068)]
    [InlineData(78, 1.5, 980, 0.043)]
    [InlineData(70, 5.0, 980, 0.2187)]
    public void Wet_cake_carries_soda(double solids, double tta, double density, double expected) =>
        Assert.Equal(expected, Trial.Value(new CakeSoda(), "soda", ("dry-solids", solids), ("liquor-tta", tta), ("liquor-density", density)), 3);

    [Fact]
    public void A_rate_of_cake_gives_the_loss() =>
        Assert.Equal(20.833, Trial.Value(new CakeSoda(), "loss", ("dry-solids", 75), ("liquor-tta", 2), ("cake-rate", 31.25)), 3);

    [Fact]
    public void A_cake_without_solids_is_refused() =>
        Assert.Equal("dry-solids", Trial.Refusal(new CakeSoda(), ("dry-solids", 0), ("liquor-tta", 2)).Role);
}
