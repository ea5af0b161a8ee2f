using Logbook.Contracts;
using Logbook.Journal;
using Logbook.Plant;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class CalculationGraphTests
{
    private static Site Changed(params (string Old, string New)[] words)
    {
        var read = SiteReader.Read(Some.Changed(words));
        Assert.Empty(read.Mistakes);
        return read.Value!;
    }

    private static Mistake OnlyMistake(params (string Old, string New)[] words)
    {
        var mistake = Assert.Single(CalculationGraph.Check(Changed(words), Some.Calculations));
        Assert.Equal("site.toml", mistake.Where.File);
        Assert.True(mistake.Where.Line > 40, mistake.ToString());
        return mistake;
    }

    [Fact]
    public void The_small_site_links()
    {
        Assert.Empty(CalculationGraph.Check(Some.Site, Some.Calculations));
    }

    [Fact]
    public void An_unknown_calculation_is_refused_with_the_nearest()
    {
        Assert.Contains("margin", OnlyMistake(("use = \"margin\"", "use = \"margim\"")).Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_role_is_refused_with_the_nearest_and_the_missing_one_named()
    {
        var mistakes = CalculationGraph.Check(Changed(("inputs.flow", "inputs.flov")), Some.Calculations);

        Assert.Equal(2, mistakes.Count);
        Assert.Contains("no input 'flov'", mistakes[0].Wrong, StringComparison.Ordinal);
        Assert.Contains("flow", mistakes[0].Accepted, StringComparison.Ordinal);
        Assert.Contains("the input 'flow' is missing", mistakes[1].Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_that_does_not_convert_is_refused()
    {
        Assert.Contains("degC", OnlyMistake(("inputs.flow = \"SL-F1\"", "inputs.flow = \"SL-T1\"")).Wrong, StringComparison.Ordinal);
        Assert.Contains("bar", OnlyMistake(("value = \"104.0 degC\"", "value = \"104.0 bar\"")).Wrong, StringComparison.Ordinal);
        Assert.Contains("WL-CE is in %", OnlyMistake(("outputs.dose = \"SL-CAO\"", "outputs.dose = \"WL-CE\""), ("outputs.causticity = \"WL-CE\"", "")).Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void A_constant_outside_its_roles_range_is_refused()
    {
        Assert.Contains("90 to 120 degC", OnlyMistake(("value = \"104.0 degC\"", "value = \"140.0 degC\"")).Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_loop_is_refused()
    {
        var twice = new Formula("twice", [new("x", "%", "x", 0, 100)], [new("y", "%", "y")], i => Formula.Give(("y", i["x"])));
        var loop = Changed(
            ("outputs.causticity = \"WL-CE\"", "\n[[calculation]]\nuse = \"twice\"\nname = \"one\"\ninputs.x = \"D-1\"\noutputs.y = \"D-2\"\n[[calculation]]\nuse = \"twice\"\nname = \"two\"\ninputs.x = \"D-2\"\noutputs.y = \"D-1\"\n"),
            ("WL-CE,", "D-1,one,site,%,derived,1,,,,,,,,,,,,,,,\nD-2,two,site,%,derived,1,,,,,,,,,,,,,,,\nWL-CE,"));

        var mistake = Assert.Single(CalculationGraph.Check(loop, [.. Some.Calculations, twice.Loaded]));

        Assert.Contains("one and two take from each other in a loop", mistake.Wrong, StringComparison.Ordinal);
        Assert.Equal("site.toml", mistake.Where.File);
    }

    [Fact]
    public void A_binding_in_force_that_the_plug_ins_cannot_serve_is_said()
    {
        var line = new Line(calculations: [Some.EndPoints.Loaded, Some.Dose.Loaded]);

        Assert.Equal("calculation.unlinked", Assert.Single(line.Save("SL-T1=101").Findings).Code);
    }
}
