using Logbook.Plugins.Causticizing;

namespace Logbook.Plugins.Tests;

/// <summary>
/// Expected values: sodium and sulphide conserved. 124.25 g/L of green liquor become 128.48 g/L of white liquor, both at
/// 25 degC, with 54.56 kg CaO and 8 kg evaporated per m3: computed from IUPAC atomic weights and Laliberte 2009.
/// </summary>
public sealed class SodaAcrossSlakerTests
{
    private static readonly SodaAcrossSlaker Calculation = new();

    [Fact]
    public void Green_liquor_foretells_white_liquor()
    {
        var values = Trial.Values(Calculation, ("gl-tta", 124.25), ("gl-sulphidity-tta", 25), ("wl-tta", 128.48), ("wl-sulphidity-tta", 25));

        Assert.Equal(128.48, values.Numbers["expected-wl-tta"], 0.01);
        Assert.Equal(25, values.Numbers["expected-wl-sulphidity"]);
        Assert.Equal(0, values.Numbers["dilution"], 1);
        Assert.Equal(0, values.Numbers["sulphide-difference"]);
        Assert.Empty(values.Notes);
    }

    [Fact]
    public void A_tenth_of_water_shows_as_ten_percent_of_dilution()
    {
        var values = Trial.Values(Calculation, ("gl-tta", 120), ("gl-sulphidity-tta", 25), ("wl-tta", 120 * 1.034 / 1.1));

        Assert.Equal(10, values.Numbers["dilution"], 9);
        Assert.Contains(values.Notes, n => n.Contains("dilute", StringComparison.Ordinal));
    }

    [Fact]
    public void White_liquor_stronger_than_its_green_is_explained() =>
        Assert.Contains(Trial.Values(Calculation, ("gl-tta", 120), ("gl-sulphidity-tta", 25), ("wl-tta", 130)).Notes, n => n.Contains("stronger", StringComparison.Ordinal));

    [Fact]
    public void Sulphide_that_differs_points_to_an_end_point() =>
        Assert.Contains(Trial.Values(Calculation, ("gl-tta", 120), ("gl-sulphidity-tta", 25), ("wl-sulphidity-tta", 28)).Notes, n => n.Contains("end point b", StringComparison.Ordinal));

    [Fact]
    public void A_tank_of_150_cubic_metres_at_300_an_hour_holds_liquor_for_half_an_hour()
    {
        Assert.Equal(30, Trial.Value(new ResidenceTime(), "time", ("level", 100), ("capacity", 150), ("flow", 300)), 9);
        Assert.Equal("flow", Trial.Refusal(new ResidenceTime(), ("level", 100), ("capacity", 150), ("flow", 0)).Role);
    }
}
