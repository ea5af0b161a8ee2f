using Logbook.Plugins.Laboratory;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: constructed end points, exact by stoichiometry, computed from IUPAC atomic weights, to the digits shown.</summary>
public sealed class AlkaliTitrationTests
{
    private static readonly AlkaliTitration Calculation = new();

    [Theory]
    [InlineData(5, 29.0, 34.2, 39.4, "naoh=73.754 na2s=32.229 na2co3=16.114 ea=89.869 aa=105.983 tta=122.098 sulphidity-aa=30.409 sulphidity-tta=26.396 activity=86.802 causticity=82.069")]
    [InlineData(5, 9.4, 14.2, 38.6, "naoh=14.255 na2s=29.750 na2co3=75.614 ea=29.130 aa=44.005 tta=119.619 sulphidity-aa=67.606 sulphidity-tta=24.870 activity=36.788 causticity=15.862")]
    [InlineData(25, 24.0, 28.3, 32.4, "naoh=12.210 na2s=5.330 na2co3=2.541 ea=14.875 aa=17.540 tta=20.081 sulphidity-aa=30.389 sulphidity-tta=26.543 activity=87.346 causticity=82.773")]
    [InlineData(5, 29.4869, 33.9718, 38.1233, "naoh=77.479 na2s=27.797 na2co3=12.865 ea=91.378 aa=105.276 tta=118.141 sulphidity-aa=26.404 sulphidity-tta=23.528 activity=89.111 causticity=85.760")]
    [InlineData(5, 29.3667, 34.3273, 39.6847, "sulphidity-aa=28.902 sulphidity-tta=25.000 activity=86.500 causticity=82.000")]
    public void Three_end_points_give_every_figure_of_the_liquor(double sample, double a, double b, double c, string expected)
    {
        var values = Trial.Values(Calculation, ("a", a), ("b", b), ("c", c), ("acid", 0.5), ("sample", sample));

        Assert.All(expected.Split(' ').Select(e => e.Split('=')),
            e => Assert.Equal(double.Parse(e[1], System.Globalization.CultureInfo.InvariantCulture), values.Numbers[e[0]], 0.0011));
    }

    [Fact]
    public void Burette_start_and_blank_are_taken_off_each_end_point()
    {
        var plain = Trial.Values(Calculation, ("a", 29.0), ("b", 34.2), ("c", 39.4), ("acid", 0.5), ("sample", 5));
        var moved = Trial.Values(Calculation, ("a", 31.3), ("b", 36.5), ("c", 41.7), ("acid", 0.5), ("sample", 5), ("start", 2.1), ("blank", 0.2));

        Assert.All(plain.Numbers, n => Assert.Equal(n.Value, moved.Numbers[n.Key], 9));
    }

    // Density ratios by Laliberte 2009, J. Chem. Eng. Data 54, 1725: green 1.0354 from 25 to 90 degC, white 1.0447 to 100 degC.
    [Theory]
    [InlineData(9.4, 14.2, 38.6, 90, 119.619 / 1.0354)]
    [InlineData(29.0, 34.2, 39.4, 100, 122.098 / 1.0446)]
    public void The_hot_line_has_a_weaker_litre(double a, double b, double c, double celsius, double expected) =>
        Assert.Equal(expected, Trial.Value(Calculation, "tta-line", ("a", a), ("b", b), ("c", c), ("acid", 0.5), ("sample", 5), ("line-temperature", celsius)), 0.02);

    [Theory]
    [InlineData(1, 20.0, 24.8, 38.6, "high for green liquor")]
    [InlineData(2, 24.0, 30.0, 39.4, "low for white liquor")]
    [InlineData(2, 35.0, 38.0, 39.4, "equilibrium")]
    [InlineData(1, 3.5, 4.2, 38.6, "sulphidity")]
    public void A_figure_that_does_not_suit_the_liquor_is_explained(double liquor, double a, double b, double c, string words) =>
        Assert.Contains(
            Trial.Values(Calculation, ("a", a), ("b", b), ("c", c), ("acid", 0.5), ("sample", 5), ("liquor", liquor)).Notes,
            n => n.Contains(words, StringComparison.Ordinal));

    [Theory]
    [InlineData(34.2, 29.0, 39.4, 0, "b")]
    [InlineData(29.0, 39.4, 34.2, 0, "c")]
    [InlineData(29.0, 34.2, 39.4, 30, "a")]
    public void End_points_that_cannot_be_are_refused_by_role(double a, double b, double c, double start, string role) =>
        Assert.Equal(role, Trial.Refusal(Calculation, ("a", a), ("b", b), ("c", c), ("acid", 0.5), ("sample", 5), ("start", start)).Role);

    [Fact]
    public void A_liquor_between_two_kinds_is_refused() =>
        Assert.Equal("liquor", Trial.Refusal(Calculation, ("a", 29), ("b", 34), ("c", 39), ("acid", 0.5), ("sample", 5), ("liquor", 1.5)).Role);
}
