using Logbook.Plugins.WhiteLiquor;

namespace Logbook.Plugins.Tests;

/// <summary>
/// Expected values: balances worked by hand for 300 m3/h of green liquor of 120 g/L taken to 82 % causticity, with molar
/// masses from IUPAC atomic weights and densities of Laliberte 2009: 292.7 m3/h after the reaction, 31.26 t/h of dry mud.
/// </summary>
public sealed class WhiteLiquorTests
{
    [Fact]
    public void Mud_carries_off_what_white_liquor_lacks()
    {
        var values = Trial.Values(new WhiteLiquorYield(), ("gl-flow", 300), ("wl-flow", 273.9), ("mud", 31.26), ("cake-solids", 60), ("liquor-density", 1107.4));

        Assert.Equal(0.913, values.Numbers["yield"], 3);
        Assert.Equal(18.8, values.Numbers["cake-liquor"], 1);
        Assert.Equal(0.913, values.Numbers["expected-yield"], 3);
        Assert.Empty(values.Notes);
    }

    [Theory]
    [InlineData(330, "dilution")]
    [InlineData(240, "lost")]
    public void An_unusual_yield_is_explained(double white, string words) =>
        Assert.Contains(
            Trial.Values(new WhiteLiquorYield(), ("gl-flow", 300), ("wl-flow", white), ("mud", 31.26), ("cake-solids", 60)).Notes,
            n => n.Contains(words, StringComparison.Ordinal));

    [Theory]
    [InlineData(0, 60, "gl-flow")]
    [InlineData(300, 0, "cake-solids")]
    public void A_yield_of_nothing_is_refused(double green, double solids, string role) =>
        Assert.Equal(role, Trial.Refusal(new WhiteLiquorYield(), ("gl-flow", green), ("wl-flow", 270), ("mud", 31), ("cake-solids", solids)).Role);

    [Fact]
    public void A_tank_being_emptied_lasts_until_its_heel()
    {
        var values = Trial.Values(new TankReserve(), ("level", 60), ("capacity", 2000), ("heel", 10), ("tta", 123), ("inflow", 200), ("outflow", 300));

        Assert.Equal(1200, values.Numbers["volume"], 9);
        Assert.Equal(147.6, values.Numbers["soda"], 9);
        Assert.Equal(10, values.Numbers["hours-to-empty"], 9);
        Assert.False(values.Numbers.ContainsKey("hours-to-full"));
    }

    [Fact]
    public void A_tank_being_filled_lasts_until_it_is_full()
    {
        var values = Trial.Values(new TankReserve(), ("level", 60), ("capacity", 2000), ("full", 95), ("inflow", 300), ("outflow", 200));

        Assert.Equal(7, values.Numbers["hours-to-full"], 9);
        Assert.False(values.Numbers.ContainsKey("hours-to-empty"));
    }

    [Fact]
    public void A_tank_left_alone_lasts_as_if_nothing_came_in() =>
        Assert.Equal(4, Trial.Value(new TankReserve(), "hours-to-empty", ("level", 60), ("capacity", 2000), ("outflow", 300)), 9);

    [Theory]
    [InlineData("outflow", 8)]
    [InlineData("inflow", 97)]
    public void Little_time_is_said(string flow, double level) =>
        Assert.Contains(Trial.Values(new TankReserve(), ("level", level), ("capacity", 2000), (flow, 300)).Notes, n => n.Contains("two hours", StringComparison.Ordinal));

    [Fact]
    public void A_steady_tank_has_no_hours() =>
        Assert.Equal("volume", Assert.Single(Trial.Values(new TankReserve(), ("level", 60), ("capacity", 2000), ("inflow", 300), ("outflow", 300)).Numbers).Key);

    [Fact]
    public void A_heel_above_full_is_refused() =>
        Assert.Equal("heel", Trial.Refusal(new TankReserve(), ("level", 60), ("capacity", 2000), ("heel", 90), ("full", 80)).Role);
}
