using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

public sealed class BoilingMarginTests
{
    private static readonly BoilingMargin Calculation = new();

    // Green liquor at one atmosphere: water activity by the Pitzer model with pitzer.dat (PHREEQC 3, USGS) and IAPWS-IF97, to 0.1 K.
    [Theory]
    [InlineData(20, 100.5)]
    [InlineData(100, 102.9)]
    [InlineData(110, 103.3)]
    [InlineData(120, 103.7)]
    [InlineData(130, 104.1)]
    [InlineData(140, 104.6)]
    public void Green_liquor_boils_above_water(double tta, double expected) =>
        Assert.Equal(expected, Trial.Value(Calculation, "boiling-point", ("slaker-temperature", 100), ("tta", tta), ("dead-load-rise", 0)), 0.05);

    // ISO 2533: 89.875 kPa at 1000 m, 79.495 kPa at 2000 m. Steam tables: water boils there at 96.7 and 93.3 degC, to 0.1 K.
    [Theory]
    [InlineData(0, 99.97)]
    [InlineData(1000, 96.7)]
    [InlineData(2000, 93.3)]
    public void Height_above_the_sea_lowers_the_boiling_point(double altitude, double expected) =>
        Assert.Equal(expected, Trial.Value(Calculation, "boiling-point", ("slaker-temperature", 90), ("tta", 0), ("altitude", altitude), ("dead-load-rise", 0)), 0.06);

    [Fact]
    public void The_margin_is_what_is_left_to_boiling()
    {
        var values = Trial.Values(Calculation, ("slaker-temperature", 103.4), ("tta", 120));

        Assert.Equal(104.2, values.Numbers["boiling-point"], 0.05);
        Assert.Equal(values.Numbers["boiling-point"] - 103.4, values.Numbers["margin"], 12);
    }

    [Theory]
    [InlineData(103.4, "Within 1 K of boiling")]
    [InlineData(102.5, "Within 2 K of boiling")]
    [InlineData(106, "treat it as boiling")]
    public void Close_to_boiling_the_note_says_to_keep_clear_and_never_to_go_there(double read, string words)
    {
        var notes = Trial.Values(Calculation, ("slaker-temperature", read), ("tta", 120)).Notes;

        Assert.Contains(notes, n => n.Contains(words, StringComparison.Ordinal));
        Assert.DoesNotContain(notes, n => n.Contains("repeat", StringComparison.Ordinal) || n.Contains("wait", StringComparison.Ordinal));
    }

    [Fact]
    public void Far_from_boiling_nothing_is_said() =>
        Assert.Empty(Trial.Values(Calculation, ("slaker-temperature", 100), ("tta", 120)).Notes);
}
