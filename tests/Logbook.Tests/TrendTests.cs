namespace Logbook.Tests;

/// <summary>Individuals chart of the "flow rate" example, NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2.</summary>
public sealed class TrendTests : IDisposable
{
    private static readonly string[] FlowRate = ["49.6", "47.6", "49.9", "51.3", "47.8", "51.2", "52.6", "52.4", "53.6", "52.1"];

    private readonly Cli _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void Readings_of_the_handbook_example_give_its_mean_and_limits_from_the_command_line()
    {
        for (var i = 0; i < FlowRate.Length; i++)
        {
            _cli.Run("record", $"RG-L={FlowRate[i]}", "--at", $"2026-11-25T0{i}:30-05:00", "--by", "op1");
        }

        var trend = _cli.Run("trend", "RG-L", "--json").Json;

        Assert.Equal(10, trend.GetProperty("n").GetInt32());
        Assert.Equal(50.81, trend.GetProperty("mean").GetDouble(), 2);
        Assert.Equal(1.8778 / 1.128, trend.GetProperty("sigma_mr").GetDouble(), 3);
        Assert.Equal("watch_high", trend.GetProperty("hours_to_limit").GetProperty("limit").GetString());
        Assert.NotEmpty(_cli.Run("trend", "RG-L").Out);
    }
}
