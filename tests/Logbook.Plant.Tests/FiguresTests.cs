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
}
