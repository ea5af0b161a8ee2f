using Logbook.Plant;

namespace Logbook.Plant.Tests;

public sealed class StarterSiteTests
{
    private static readonly Site Site = StarterSite.Site;

    [Fact]
    public void It_has_no_mistake() => Assert.Equal("", string.Join("\n", SiteReader.Read(StarterSite.Files).Mistakes));

    [Fact]
    public void Every_system_has_readings_and_equipment_or_a_laboratory()
    {
        Assert.All(Area.All, area => Assert.Contains(Site.Points, p => p.Area == area && p.Kind == PointKind.Read));
        Assert.All(Area.All.Where(a => a != "laboratory"), area => Assert.Contains(Site.Equipment, e => e.Area == area));
    }

    [Fact]
    public void Every_system_has_a_caution_that_one_of_its_points_brings_up() => Assert.All(Area.All, area =>
        Assert.Contains(Site.Cautions.SelectMany(c => c.Triggers), t => t.StartsWith("limit:", StringComparison.Ordinal) && Site.FindPoint(t[6..])!.Area == area));

    [Fact]
    public void Every_reading_stands_in_exactly_one_round() => Assert.Equal(
        Site.Points.Where(p => p.Kind == PointKind.Read).Select(p => p.Tag).Order(StringComparer.Ordinal),
        Site.Rounds.SelectMany(r => r.Points).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_derived_point_is_fed() => Assert.Equal(
        Site.Points.Where(p => p.Kind == PointKind.Derived).Select(p => p.Tag).Order(StringComparer.Ordinal),
        Site.Calculations.SelectMany(c => c.Outputs.Values).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("hourly", 12, 16)]
    [InlineData("field", 28, 34)]
    public void A_round_has_a_length_that_can_be_walked(string id, int least, int most) =>
        Assert.InRange(Site.FindRound(id)!.Points.Count, least, most);

    [Fact]
    public void Rounds_take_no_more_than_a_quarter_of_a_shift() => Assert.InRange(Workload.Share(Site), 0.1, 0.25);

    [Fact]
    public void The_field_walk_looks_listens_and_measures()
    {
        var points = Site.FindRound("field")!.Points.Select(t => Site.FindPoint(t)!).ToList();

        Assert.True(Site.FindRound("field")!.Field);
        Assert.True(points.Count(p => p.Choices.Count > 0) >= 20);
        Assert.True(points.Count(p => p.Choices.Count == 0) >= 5);
    }

    [Fact]
    public void Boiling_is_judged_by_the_margin_alone()
    {
        // Watch below 2 K, urgent below 1 K: common practice, no source.
        Assert.Equal(Limits.None, Site.FindPoint("SL-T1")!.Limits);
        Assert.Equal(new Limits(1, 2, null, null), Site.FindPoint("SL-MARGIN")!.Limits);
    }

    [Theory]
    // ACGIH threshold limit value 1 ppm, short-term 5 ppm, as listed beside OSHA's limits.
    [InlineData("ST-H2S1")]
    [InlineData("ST-H2S2")]
    [InlineData("ST-H2S3")]
    public void Gas_is_judged_whatever_runs(string tag)
    {
        var point = Site.FindPoint(tag)!;

        Assert.True(point.Always);
        Assert.Null(point.Equipment);
        Assert.Equal((1, 5), (point.Limits.WatchHigh, point.Limits.UrgentHigh));
    }

    [Fact]
    public void Levels_and_safety_equipment_are_judged_whatever_runs() => Assert.All(
        Site.Points.Where(p => p.Description.Contains(" level", StringComparison.Ordinal) || p.Description.StartsWith("Eyewash", StringComparison.Ordinal)),
        p => Assert.True(p.Always, p.Tag));

    [Fact]
    public void First_aid_for_alkali_is_water_only() => Assert.All(Site.Cautions, c =>
    {
        Assert.DoesNotContain("vinegar", c.FirstAid, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("boric", c.FirstAid, StringComparison.OrdinalIgnoreCase);
    });

    [Fact]
    public void Cautions_are_drafts_until_the_site_approves_them() => Assert.All(Site.Cautions, c => Assert.Null(c.ApprovedBy));

    [Fact]
    public void Constants_say_their_source_and_uncertainty() => Assert.All(
        Site.Calculations.SelectMany(c => c.Inputs.Values).OfType<InputSource.Constant>(),
        c => Assert.True(c.Source.Length > 0 && c.Unit is not null));

    /// <summary>What was measured has an uncertainty; only an aim and a choice have none.</summary>
    [Fact]
    public void Only_aims_and_choices_are_exact() => Assert.Equal(
        ["liquor", "target-causticity", "target-tta"],
        Site.Calculations.SelectMany(c => c.Inputs).Where(i => i.Value is InputSource.Constant { U: 0 }).Select(i => i.Key).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), StringComparer.Ordinal);

    [Fact]
    public void Every_system_has_a_calculation_that_takes_its_readings() => Assert.All(Area.All.Where(a => a != "site"), area =>
        Assert.Contains(Site.Calculations, c => c.Inputs.Values.OfType<InputSource.FromPoint>().Any(i => Site.FindPoint(i.Tag)!.Area == area)));

    [Fact]
    public void Every_strength_says_its_basis_and_the_temperature_of_its_litre() => Assert.All(
        Site.Points.Where(p => p.Unit.Dimension == "alkali"), p => Assert.Matches("as Na2O at (25 degC|line temperature)$", p.Description));

    // A laboratory's litre is 3 to 4 % smaller than the same liquor's at the flow meter.
    [Fact]
    public void No_cold_strength_meets_a_hot_flow_without_the_temperatures_that_bring_it_there() => Assert.All(
        Site.Calculations.Where(c => c.Inputs.Values.OfType<InputSource.FromPoint>().Any(i => Site.FindPoint(i.Tag)!.Unit.Dimension == "volume-flow")),
        c => Assert.All(c.Inputs.Where(i => i.Value is InputSource.FromPoint from && Site.FindPoint(from.Tag)!.Description.EndsWith("at 25 degC", StringComparison.Ordinal)),
            i => Assert.True(c.Inputs.ContainsKey("tta-temperature") && c.Inputs.ContainsKey("flow-temperature"), $"{c.Name}, {i.Key}")));

    [Theory]
    [InlineData("boiling", "dead-load-rise", 0.5, "K", 0.2)]
    [InlineData("lime", "screw-factor", 10, "kg/rev", 0.15)]
    [InlineData("slaker", "evaporation", 8, "kg/m3", 1)]
    public void A_constant_is_read_with_its_unit(string binding, string role, double value, string unit, double u)
    {
        var constant = Assert.IsType<InputSource.Constant>(Site.Calculations.Single(c => c.Name == binding).Inputs[role]);

        Assert.Equal((value, unit, u), (constant.Value, constant.Unit!.Name, constant.U));
    }
}
