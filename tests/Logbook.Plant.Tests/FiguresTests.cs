namespace Logbook.Plant.Tests;

public sealed class FiguresTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(0.40, "0.4")]
    [InlineData(0.0412, "0.041")]
    [InlineData(0.0000087, "0.0000087")]
    [InlineData(12.4, "12")]
    [InlineData(-1.26, "-1.3")]
    [InlineData(171.2, "171")]
    [InlineData(1534, "1534")]
    public void Two_figures_that_count_and_never_a_power_of_ten(double value, string written) => Assert.Equal(written, Figures.Two(value));

    [Theory]
    [InlineData(-0.04, 1, "0.0")]
    [InlineData(-0.0, 0, "0")]
    [InlineData(-0.06, 1, "-0.1")]
    [InlineData(103.44, 1, "103.4")]
    public void What_rounds_to_nothing_has_no_sign(double value, int decimals, string written) => Assert.Equal(written, Figures.Fixed(value, decimals));

    [Theory]
    [InlineData(0.5, 0, "0.5")]
    [InlineData(-0.04, 1, "-0.04")]
    [InlineData(0, 1, "0.0")]
    [InlineData(103.44, 1, "103.4")]
    public void What_was_read_never_stands_there_as_nothing(double value, int decimals, string written) => Assert.Equal(written, Figures.Fixed(value, decimals, whole: true));
}
