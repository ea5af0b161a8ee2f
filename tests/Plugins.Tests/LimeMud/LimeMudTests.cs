using Logbook.Plugins.LimeMud;

namespace Logbook.Plugins.Tests;

public sealed class LimeMudTests
{
    // Volumes add; calcite 2710 kg/m3 from memory of the handbooks; worked by hand.
    [Theory]
    [InlineData(1046.8, 980, 10)]
    [InlineData(1123.4, 980, 20)]
    [InlineData(1166.1, 980, 25)]
    [InlineData(1262.0, 980, 35)]
    [InlineData(1880, 980, 75)]
    [InlineData(1302.2, 1110, 25)]
    public void Density_gives_the_solids(double density, double liquor, double expected)
    {
        var values = Trial.Values(new MudSolids(), ("density", density), ("liquor-density", liquor));

        Assert.Equal(expected, values.Numbers["solids"], 0.02);
        Assert.Equal(density * values.Numbers["solids"] / 100, values.Numbers["solids-per-litre"], 9);
    }

    [Theory]
    [InlineData(950)]
    [InlineData(2700)]
    public void A_density_outside_liquor_and_solid_is_refused(double density) =>
        Assert.Equal("density", Trial.Refusal(new MudSolids(), ("density", density), ("solid-density", 2600)).Role);

    // Computed from IUPAC atomic weights: a tonne of dry mud with 95 % calcite gives 0.532 t CaO in 0.582 t of lime.
    [Fact]
    public void Mud_becomes_lime_in_the_kiln()
    {
        var values = Trial.Values(new MudToKiln(), ("flow", 100), ("density", 1262.0), ("storage-change", 1.5));

        var feed = values.Numbers["feed"];
        Assert.Equal(44.17, feed, 0.02); // 100 x 1262 x 0.35 / 1000
        Assert.Equal(feed + 1.5, values.Numbers["made"], 9);
        Assert.Equal(0.532, values.Numbers["kiln-cao"] / feed, 3);
        Assert.Equal(0.582, values.Numbers["kiln-product"] / feed, 3);
    }

    [Fact]
    public void Without_the_storage_change_the_mud_made_is_not_known() =>
        Assert.False(Trial.Values(new MudToKiln(), ("flow", 100), ("density", 1262.0)).Numbers.ContainsKey("made"));

    [Fact]
    public void A_tank_that_gives_more_than_was_fed_is_refused() =>
        Assert.Equal("storage-change", Trial.Refusal(new MudToKiln(), ("flow", 100), ("density", 1262.0), ("storage-change", -60)).Role);

    // Computed from IUPAC atomic weights: 54.558 kg CaO in 61.998 kg lime, 0.620 kg grits, 104.195 kg mud per m3; 31.26 t/h at 300 m3/h.
    [Fact]
    public void Lime_becomes_mud() =>
        Assert.Equal(31.2585, Trial.Value(new MudFromLime(), "made", ("flow", 300), ("cao-dose", 54.558), ("inert", 7.440), ("grits", 0.620)), 3);

    [Theory]
    [InlineData(60, 0.6, "free-cao")]
    [InlineData(0, 150, "grits")]
    public void More_out_than_in_is_refused(double free, double grits, string role) =>
        Assert.Equal(role, Trial.Refusal(new MudFromLime(), ("flow", 300), ("cao-dose", 54.558), ("free-cao", free), ("inert", 7.44), ("grits", grits)).Role);

    // Kremser's equation by hand: ratio 3, two stages leave 2 / 26.
    [Theory]
    [InlineData(30, 2, 0.076923)]
    [InlineData(10, 3, 0.25)]
    [InlineData(10.00001, 3, 0.25)]
    [InlineData(0, 1, 1)]
    public void Washing_leaves_a_part_of_the_soda(double wash, double stages, double expected) =>
        Assert.Equal(expected, Trial.Value(new MudWashing(), "remaining", ("wash", wash), ("underflow", 10), ("stages", stages), ("inlet-tta", 100)), 5);

    [Fact]
    public void The_washs_own_soda_is_counted()
    {
        var values = Trial.Values(new MudWashing(), ("wash", 30), ("underflow", 10), ("stages", 2), ("inlet-tta", 100), ("wash-tta", 9));

        Assert.Equal(16, values.Numbers["outlet-tta"], 9); // 9 + 91 / 13
        Assert.Equal(84, values.Numbers["efficiency"], 9);
    }

    [Fact]
    public void A_wash_as_strong_as_the_mud_is_said() =>
        Assert.Contains(Trial.Values(new MudWashing(), ("wash", 30), ("underflow", 10), ("inlet-tta", 10), ("wash-tta", 12)).Notes, n => n.Contains("swapped", StringComparison.Ordinal));

    [Theory]
    [InlineData(0, 100, "underflow")]
    [InlineData(10, 0, "inlet-tta")]
    public void Washing_of_nothing_is_refused(double underflow, double inlet, string role) =>
        Assert.Equal(role, Trial.Refusal(new MudWashing(), ("wash", 30), ("underflow", underflow), ("inlet-tta", inlet)).Role);
}
