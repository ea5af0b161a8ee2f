using Logbook.Journal;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class LimitCheckTests
{
    private readonly Line _line = new();

    [Fact]
    public void A_value_above_the_urgent_limit_yields_one_finding_that_says_how_far()
    {
        var finding = Assert.Single(_line.Save("SL-I=145").Findings);

        Assert.Equal(Level.Urgent, finding.Level);
        Assert.Equal("limit.urgent-high", finding.Code);
        Assert.Equal("SL-I", finding.Point);
        Assert.Equal("Slaker agitator current 145 A, 5 A above the urgent limit 140 A; follow the site's procedure for it now", finding.Text);
    }

    [Theory]
    [InlineData(0.4, "within 1 K of boiling: 0.4 K left; follow")]
    [InlineData(-0.6, "within 1 K of boiling: 0.6 K ABOVE it; follow")]
    public void A_slaker_beyond_boiling_has_nothing_left(double margin, string words)
    {
        var point = _line.Desk.Site.FindPoint("SL-T1")! with { Tag = "SL-MARGIN", Description = "Margin of the slaker to boiling", Limits = new(1, 2, null, null), Unit = Plant.Units.Find("K")! };

        Assert.StartsWith(words, Assert.Single(LimitCheck.Of(point, margin, atWork: true)).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SL-I=140", "limit.watch-high")]
    [InlineData("SL-I=120", null)]
    [InlineData("SL-I=80", null)]
    [InlineData("SL-I=79", "limit.watch-low")]
    [InlineData("SL-I=59", "limit.urgent-low")]
    [InlineData("SL-HATCH=1", null)]
    [InlineData("SL-HATCH=2", "choice.watch")]
    [InlineData("SL-HATCH=3", "choice.urgent")]
    public void A_limit_itself_is_still_within(string reading, string? code)
    {
        Assert.Equal(code is null ? [] : [code], _line.Save(reading).Findings.Select(f => f.Code), StringComparer.Ordinal);
    }

    [Fact]
    public void Close_to_boiling_the_words_are_the_sites_procedure_and_nobody_is_sent_there()
    {
        var entry = _line.Save("SL-T1=103.4");

        var finding = entry.Findings[0];
        Assert.Equal("SL-MARGIN", finding.Point);
        Assert.StartsWith("within 1 K of boiling: 0.6 K left; follow the site's high-temperature procedure now; keep clear of hatches, do not sample", finding.Text, StringComparison.Ordinal);
        Assert.Contains(finding.Evidence, e => e.Contains("0.4 K below the urgent limit", StringComparison.Ordinal));
    }

    [Fact]
    public void Limits_rest_while_the_equipment_stands_but_for_points_judged_always()
    {
        Assert.NotNull(Writing.ChangeState(_line.Desk, "slaker", "stopped", null, null, "op1").Record);
        _line.Later(1);

        var findings = _line.Save("SL-I=0", "SL-F1=0", "SL-HATCH=3", "SL-T1=103.9").Findings;

        Assert.Equal(["SL-HATCH", "SL-MARGIN"], findings.Where(f => f.Code != "calculation.resting").Select(f => f.Point), StringComparer.Ordinal);
        Assert.Equal("Slaker is stopped; not computed: Test of dose (lime)", Assert.Single(findings, f => f.Code == "calculation.resting").Text);
    }

    [Fact]
    public void Limits_hold_while_the_equipment_is_being_started()
    {
        Assert.NotNull(Writing.ChangeState(_line.Desk, "slaker", "starting", null, null, "op1").Record);
        _line.Later(1);

        Assert.Equal("limit.urgent-low", Assert.Single(_line.Save("SL-I=10").Findings).Code);
    }

    [Fact]
    public void Advice_is_silent_while_the_slaker_is_urgent()
    {
        Assert.Contains(_line.Save("LM-F1=23", "LM-CAO=88", "SL-F1=300").Findings, f => f.Code == "calc.dose.note");

        var urgent = _line.Save("LM-F1=23", "LM-CAO=88", "SL-F1=300", "SL-T1=103.6");

        Assert.Equal(Level.Urgent, urgent.Findings[0].Level);
        Assert.DoesNotContain(urgent.Findings, f => f.Code == "calc.dose.note");
        Assert.DoesNotContain(_line.Save("LM-F1=23", "LM-CAO=88", "SL-F1=300").Findings, f => f.Code == "calc.dose.note");
        _line.Later(1);
        Assert.Contains(_line.Save("LM-F1=23", "LM-CAO=88", "SL-F1=300", "SL-T1=100.0").Findings, f => f.Code == "calc.dose.note");
    }

    [Fact]
    public void The_worst_comes_first_whatever_the_order_of_typing()
    {
        string[] inOrder = [.. _line.Save("SL-HATCH=2", "SL-I=125", "SL-F1=190").Findings.Select(f => f.Point!)];

        Assert.Equal(["SL-F1", "SL-I", "SL-HATCH"], inOrder[..3]);
    }
}
