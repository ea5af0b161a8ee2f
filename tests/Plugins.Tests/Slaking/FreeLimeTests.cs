using Logbook.Plugins.Slaking;

namespace Logbook.Plugins.Tests;

/// <summary>Expected values: computed from IUPAC atomic weights. Carbonate 76.5 g/L Na2O of which 88 % can turn takes 60.910 kg CaO.</summary>
public sealed class FreeLimeTests
{
    private static readonly FreeLime Calculation = new();

    [Fact]
    public void Lime_beyond_the_equilibrium_stays_as_hydroxide()
    {
        var values = Trial.Values(Calculation, ("cao-dose", 65), ("na2co3", 76.5), ("equilibrium-conversion", 88));

        Assert.Equal(5.404, values.Numbers["free-calcium-hydroxide"], 3); // 1.32125 (65 - 60.910)
        Assert.Equal(6.715, values.Numbers["over-liming"], 3);
        Assert.Contains(values.Notes, n => n.Contains("Over-limed", StringComparison.Ordinal));
    }

    [Fact]
    public void Below_the_equilibrium_nothing_is_free()
    {
        var values = Trial.Values(Calculation, ("cao-dose", 54.558), ("na2co3", 76.5), ("equilibrium-conversion", 88));

        Assert.Equal(0, values.Numbers["free-calcium-hydroxide"]);
        Assert.Equal(-10.428, values.Numbers["over-liming"], 3);
        Assert.Empty(values.Notes);
    }

    [Fact]
    public void Little_room_is_said() =>
        Assert.Contains(Trial.Values(Calculation, ("cao-dose", 60), ("na2co3", 76.5), ("equilibrium-conversion", 88)).Notes, n => n.Contains("room", StringComparison.Ordinal));
}
