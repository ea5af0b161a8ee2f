using Logbook.Plugins.Causticizing;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: first order in stirred tanks, exact, worked by hand.</summary>
public sealed class CausticizingTrainTests
{
    private static readonly CausticizingTrain Calculation = new();

    [Theory]
    [InlineData(0.04, 225, 80.86, 85.45, 87.09)] // 3 x 45 min
    [InlineData(0.02, 250, 78.00, 83.00, 85.50)] // 3 x 50 min
    public void Each_tank_covers_its_share_of_the_way(double rate, double volume, double first, double second, double third)
    {
        var values = Trial.Values(Calculation, ("inlet-causticity", 68), ("equilibrium", 88), ("rate", rate), ("flow", 300),
            ("volume-1", volume), ("volume-2", volume), ("volume-3", volume));

        Assert.Equal(first, values.Numbers["causticity-1"], 2);
        Assert.Equal(second, values.Numbers["causticity-2"], 2);
        Assert.Equal(third, values.Numbers["causticity-3"], 2);
        Assert.Equal(0.6 * volume, values.Numbers["retention"], 9);
    }

    [Fact]
    public void The_lime_may_set_the_ceiling_below_the_equilibrium() =>
        Assert.Equal(82.0, Trial.Value(Calculation, "ceiling", Train([("gl-causticity", 15), ("liming-ratio", 0.78824)])), 2);

    [Fact]
    public void A_measured_tank_has_a_distance()
    {
        var values = Trial.Values(Calculation, Train([("causticity-1", 80), ("causticity-3", 83)]));

        Assert.Equal(-0.857, values.Numbers["distance-1"], 3);
        Assert.Equal(-4.089, values.Numbers["distance-3"], 3);
        Assert.False(values.Numbers.ContainsKey("distance-2"));
        Assert.Contains(values.Notes, n => n.Contains("short-circuiting", StringComparison.Ordinal));
    }

    [Fact]
    public void Causticity_that_falls_along_the_train_points_to_samples() =>
        Assert.Contains(Trial.Values(Calculation, Train([("causticity-1", 82), ("causticity-2", 80)])).Notes, n => n.Contains("swapped", StringComparison.Ordinal));

    [Fact]
    public void Lime_that_allows_less_than_is_there_is_said() =>
        Assert.Contains(Trial.Values(Calculation, Train([("gl-causticity", 15), ("liming-ratio", 0.5)])).Notes, n => n.Contains("does not belong", StringComparison.Ordinal));

    [Fact]
    public void Impossible_inputs_are_refused()
    {
        Assert.Equal("flow", Trial.Refusal(Calculation, Train([("flow", 0)])).Role);
        Assert.Equal("inlet-causticity", Trial.Refusal(Calculation, Train([("inlet-causticity", 90)])).Role);
    }

    private static (string, double)[] Train((string, double)[] more) =>
        [("inlet-causticity", 68), ("equilibrium", 88), ("flow", 300), ("volume-1", 225), ("volume-2", 225), ("volume-3", 225), .. more];
}
