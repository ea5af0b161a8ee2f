using Example;
using Logbook.Testing;

namespace Logbook.Plugins.Tests;

/// <summary>The worked example of DEVELOPERS.md, tested as its author would test it.</summary>
public sealed class WashRatioTests
{
    private static readonly PluginBench Bench = new(new WashRatio());

    [Fact]
    public void Its_description_is_whole() => Assert.Empty(Bench.Faults());

    // By hand: 1.2 m3/h is 1200 kg/h of water; over 300 kg/h of dregs that is 4.
    [Fact]
    public void Twelve_hundred_kilograms_on_three_hundred_are_four()
    {
        var run = Bench.Run(["wash=1.2", "dregs=300"], ["wash=0.03", "dregs=5%"]);

        Assert.Equal(4, run.Value("ratio"), 9);
        Assert.Equal(4 * Math.Sqrt((0.025 * 0.025) + (0.05 * 0.05)), run.U("ratio")!.Value, 0.02); // relative parts in squares
    }

    [Fact]
    public void Units_convert_as_in_the_program() => Assert.Equal(4, Bench.Run("wash=20 L/min", "dregs=0.3 t/h").Value("ratio"), 9);

    [Fact]
    public void No_dregs_give_no_ratio() => Assert.Equal("dregs is 0 kg/h: a ratio needs some dregs", Bench.Refusal("wash=1", "dregs=0"));

    [Fact]
    public void Too_little_wash_is_said_with_the_other_explanation() => Assert.Contains("counted too high", Assert.Single(Bench.Run("wash=0.2", "dregs=300").Notes), StringComparison.Ordinal);
}
