using Logbook.Demo.Line;

namespace Logbook.Demo.Tests;

/// <summary>A quiet line against figures that follow from the IUPAC atomic weights and the CRC Handbook's heats of formation.</summary>
public sealed class HotSideTests
{
    private const double Minute = 1 / 60.0;

    /// <summary>300 m3/h at 90 degC, 120 g/L as Na2O, sulphidity 25 %, causticity 15 %, 62 kg of 88 % lime a m3.</summary>
    private static SlakerFeed Feed { get; } = new(Liquor.Of(120, 0.25, 0.15), 90, 300, 61.998, 0.88, 60, 0.01, 8);

    private static HotMoment Settled(SlakerFeed feed, double boilingPoint = 104.3)
    {
        var hot = new HotSide(feed, boilingPoint);
        var moment = hot.Step(feed, Minute);
        for (var i = 0; i < 24 * 60; i++)
        {
            moment = hot.Step(feed, Minute);
        }

        return moment;
    }

    // (rho cp T_gl + m cp_l T_l + m_CaO h - w lambda) / (rho cp + m cp_l) with 1131.5 kg/m3, 3.656, 1150 and 2257 kJ/kg: 100.2 degC.
    [Fact]
    public void The_slaker_settles_where_the_heat_balance_says() => Assert.Equal(100.2, Settled(Feed).SlakerTemperature, tolerance: 0.15);

    // CaO 54.558 kg/m3 would take 15 % to 82.0 % if all of it reacted: 0.90478 kg CaO a kg Na2O converted (56.077 / 61.97854).
    [Fact]
    public void Causticity_comes_close_to_what_the_lime_allows_and_never_beyond()
    {
        var causticity = 100 * Settled(Feed).Outflow.Liquor.Causticity;

        Assert.InRange(causticity, 80.5, 82.0);
    }

    [Fact]
    public void Too_much_lime_stops_at_equilibrium_and_the_rest_stays_free()
    {
        var overlimed = Settled(Feed with { Lime = 80, Evaporation = 16 });

        // With K = 55 kmol/m3 the closed form gives 0.883 at 120 g/L as Na2O and a sulphidity of 25 %.
        Assert.InRange(100 * overlimed.Outflow.Liquor.Causticity, 86.5, 88.4);
        Assert.True(overlimed.Outflow.Lime > 0.1);
    }

    [Fact]
    public void Liquor_and_mud_weigh_what_stoichiometry_says()
    {
        var outflow = Settled(Feed).Outflow;
        var (clear, volume) = outflow.Clear(100);

        // CaCO3 is 1.78480 times the CaO that reacted (100.086 / 56.077), inert 7.44, grits 0.62 kg/m3.
        var reacted = outflow.Mud * Molar.CaO;
        Assert.Equal((1.78480 * reacted) + (outflow.Lime * Molar.CaOH2) + 7.44 - 0.62, outflow.Solids, tolerance: 0.02);
        Assert.Equal(120, clear.Tta * volume, tolerance: 1e-6);
        Assert.Equal(0.9758, volume, tolerance: 0.003);
    }

    // Ca(OH)2 + Na2CO3 -> 2 NaOH + CaCO3.
    [Fact]
    public void Each_carbonate_gone_made_two_hydroxide_and_one_mud()
    {
        var (before, after) = (Feed.Liquor, Settled(Feed).Outflow);

        Assert.Equal(before.Na2CO3 - after.Liquor.Na2CO3, after.Mud, tolerance: 1e-9);
        Assert.Equal(after.Liquor.NaOH - before.NaOH, 2 * after.Mud, tolerance: 1e-9);
        Assert.Equal(before.Na2S, after.Liquor.Na2S, tolerance: 1e-9);
    }

    [Fact]
    public void The_slaker_never_passes_its_boiling_point()
    {
        var surge = Settled(Feed with { Lime = 110 });

        Assert.True(surge.SlakerTemperature <= surge.BoilingPoint);
        Assert.True(surge.BoilingPoint - surge.SlakerTemperature < 1);
        Assert.True(surge.Evaporation > Feed.Evaporation + 5);
    }
}
