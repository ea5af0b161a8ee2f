using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: mass balances worked by hand; 18.60 t/h of lime with 88 % available CaO to 300 m3/h is 54.56 kg CaO/m3.</summary>
public sealed class LimeFeedTests
{
    private static readonly LimeFeed Calculation = new();

    [Fact]
    public void Weigher_and_screw_tell_the_same_dose()
    {
        var values = Trial.Values(Calculation, ("lime", 18.6), ("screw-speed", 20), ("screw-factor", 15.5), ("available-cao", 88), ("flow", 300));

        Assert.Equal(54.56, values.Numbers["from-weigher"], 2);
        Assert.Equal(54.56, values.Numbers["from-screw"], 2);
        Assert.Empty(values.Notes);
    }

    [Fact]
    public void A_bridging_screw_is_named_with_the_other_explanation() =>
        Assert.Contains(
            Trial.Values(Calculation, ("lime", 16), ("screw-speed", 20), ("screw-factor", 15.5), ("available-cao", 88), ("flow", 300)).Notes,
            n => n.Contains("bridging", StringComparison.Ordinal) && n.Contains("calibration", StringComparison.Ordinal));

    [Fact]
    public void A_weigher_alone_is_enough()
    {
        var values = Trial.Values(Calculation, ("lime", 18.6), ("screw-speed", 20), ("available-cao", 88), ("flow", 300));

        Assert.Equal("from-weigher", Assert.Single(values.Numbers).Key);
        Assert.Contains(values.Notes, n => n.Contains("screw-factor", StringComparison.Ordinal));
    }

    [Fact]
    public void No_flow_is_refused() =>
        Assert.Equal("flow", Trial.Refusal(Calculation, ("lime", 18.6), ("available-cao", 88), ("flow", 0)).Role);

    [Fact]
    public void Neither_weigher_nor_screw_is_refused()
    {
        Assert.Equal("lime", Trial.Refusal(Calculation, ("available-cao", 88), ("flow", 300)).Role);
        Assert.Equal("screw-factor", Trial.Refusal(Calculation, ("screw-speed", 20), ("available-cao", 88), ("flow", 300)).Role);
    }
}
