using Logbook.Contracts;
using Logbook.Testing;

namespace Logbook.Checks.Tests;

public sealed class CalculationByHandTests
{
    private static string Wrong(params string[] typed) =>
        Assert.Single(CalculationRun.ByHand(Some.Margin.Loaded, typed, [], new InlineGuard()).Mistakes).ToString();

    [Fact]
    public void Units_are_brought_to_the_roles()
    {
        var run = CalculationRun.ByHand(Some.Margin.Loaded, ["temperature=214.7 degF", "boiling=104"], ["temperature=0.3", "boiling=0.4"], new InlineGuard());

        var output = Assert.Single(run.Value!.Outputs);
        Assert.Equal(104 - ((214.7 - 32) * 5 / 9), output.Value, 1e-9);
        Assert.Equal(0.5, output.U!.Value, 1e-9);
    }

    [Fact]
    public void Without_uncertainties_none_is_claimed()
    {
        var run = CalculationRun.ByHand(Some.Margin.Loaded, ["temperature=101", "boiling=104"], [], new InlineGuard());

        Assert.Null(Assert.Single(run.Value!.Outputs).U);
    }

    [Theory]
    [InlineData("temperature=101", "boiling is missing")]
    [InlineData("temperature=101 boiling=140", "boiling is 140 degC; accepted: 90 to 120 degC")]
    [InlineData("temperature=101 boiling=104 boilng=1", "no role 'boilng'; nearest: boiling")]
    [InlineData("temperature=101 boiling=104 boiling=104", "boiling is given twice")]
    [InlineData("temperature=101 boiling104", "'boiling104' has no '='")]
    [InlineData("temperature=warm boiling=104", "temperature: 'warm' is no number")]
    public void What_cannot_be_run_is_one_clear_line(string typed, string wrong)
    {
        var mistakes = CalculationRun.ByHand(Some.Margin.Loaded, typed.Split(' '), [], new InlineGuard()).Mistakes;

        Assert.Contains(mistakes, m => m.ToString().Contains(wrong, StringComparison.Ordinal));
    }

    [Fact]
    public void A_refusal_is_the_calculations_own_sentence()
    {
        var run = CalculationRun.ByHand(Some.EndPoints.Loaded, ["a=34", "b=29", "c=40"], [], new InlineGuard());

        Assert.Equal("b lies before a; end points are cumulative", Assert.Single(run.Mistakes).ToString());
    }

    [Fact]
    public void Two_mistakes_are_two_lines()
    {
        Assert.Equal(2, CalculationRun.ByHand(Some.Margin.Loaded, ["temperature=x", "boiling=y"], [], new InlineGuard()).Mistakes.Count(m => m.Wrong.Contains("is no number", StringComparison.Ordinal)));
        Assert.Contains("is missing", Wrong("temperature=101"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_bench_holds_a_calculation_to_its_description()
    {
        var liar = new Formula("liar", [new("x", "%", "x", 0, 100)], [new("y", "%", "y")], i => i["x"] > 50 ? Formula.Give(("z", 1)) : Formula.Give(("y", double.NaN)));

        Assert.Contains("'z'", Assert.Throws<BenchException>(() => new PluginBench(liar).Run("x=60")).Message, StringComparison.Ordinal);
        Assert.Contains("no number for 'y'", Assert.Throws<BenchException>(() => new PluginBench(liar).Run("x=40")).Message, StringComparison.Ordinal);
        Assert.Empty(new PluginBench(liar).Faults());
    }

    [Fact]
    public void The_bench_names_every_fault_of_a_description()
    {
        var faulty = new Formula("Bad", [new("x", "%", "x", 0, 100) { Default = 101, CountsOnFrom = "w" }, new("x", "furlong", "x", 5, 5)], [new("y", "%", "y") { MethodU = "much", Moves = ["w"] }], _ => Formula.Give());

        Assert.Equal(8, new PluginBench(faulty).Faults().Count);
    }

    [Fact]
    public void The_bench_gives_up_a_calculation_that_never_comes_back()
    {
        var bench = new PluginBench(new NeverBack(Some.Margin.Loaded.Calculation.Info)) { Deadline = TimeSpan.FromSeconds(0.5) };

        var late = Assert.Throws<BenchException>(() => bench.Run("temperature=101", "boiling=104"));

        Assert.StartsWith("it takes longer than 0.5 s", late.Message, StringComparison.Ordinal);
    }

    private sealed class NeverBack(CalculationInfo info) : ICalculation
    {
        public CalculationInfo Info => info;

        public Outcome Run(Inputs inputs)
        {
            Thread.Sleep(Timeout.Infinite);
            return new Refused("x", "never said");
        }
    }
}
