using System.Globalization;
using Logbook.Contracts;

namespace Logbook.PluginHost.Tests;

public sealed class DeadlineGuardTests : IDisposable
{
    private readonly PluginFolder _folder = new();

    [Fact]
    public void A_good_answer_passes_unchanged()
    {
        var outcome = new DeadlineGuard().Run(call => call(Load("NoNumber"), X(7)));

        Assert.Equal(7, Assert.IsType<Values>(outcome).Numbers["y"]);
    }

    [Fact]
    public void A_crash_becomes_one_sentence_that_names_the_plug_in()
    {
        var outcome = new DeadlineGuard().Run(call => call(Load("Throws"), X(1)));

        Assert.Equal("plug-in Throws, throws failed: InvalidOperationException: not today?second line", Assert.IsType<Failed>(outcome).Sentence);
    }

    [Theory]
    [InlineData(0, "no number")]
    [InlineData(1, "no number")]
    [InlineData(2, "none of its outputs")]
    [InlineData(3, "no result")]
    [InlineData(4, "without naming one of its roles")]
    [InlineData(5, "neither values nor a refusal")]
    [InlineData(6, "neither values nor a refusal")]
    public void What_is_no_answer_becomes_a_failure(double x, string words)
    {
        var outcome = new DeadlineGuard().Run(call => call(Load("NoNumber"), X(x)));

        Assert.Contains(words, Assert.IsType<Failed>(outcome).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_calculation_that_never_comes_back_is_left_out_and_the_others_still_answer()
    {
        var guard = new DeadlineGuard(TimeSpan.FromSeconds(1));
        var (endless, good) = (Load("Endless"), Load("NoNumber"));

        var outcomes = guard.Run<Outcome[]>(call => [call(good, X(7)), call(endless, X(1)), call(good, X(8))]);
        var again = guard.Run(call => call(endless, X(1)));

        Assert.IsType<Values>(outcomes[0]);
        Assert.Contains("plug-in Endless, endless failed: it took longer than 1 s", Assert.IsType<Failed>(outcomes[1]).Sentence, StringComparison.Ordinal);
        Assert.IsType<Values>(outcomes[2]);
        Assert.IsType<Failed>(again);
    }

    [Fact]
    public void The_third_pass_with_a_failure_switches_the_calculation_off()
    {
        var guard = new DeadlineGuard();
        var calculation = Load("NoNumber");

        for (var pass = 0; pass < 3; pass++)
        {
            // many failures in one pass count once
            Assert.IsType<Values>(guard.Run(call =>
            {
                call(calculation, X(0));
                call(calculation, X(0));
                return call(calculation, X(7));
            }));
        }

        Assert.Contains("switched off", Assert.IsType<Failed>(guard.Run(call => call(calculation, X(7)))).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_programs_own_mistake_in_a_pass_is_not_blamed_on_a_plug_in() =>
        Assert.Throws<KeyNotFoundException>(() => new DeadlineGuard().Run<int>(_ => throw new KeyNotFoundException()));

    [Fact]
    public void A_pass_runs_on_a_background_thread_in_no_ones_culture()
    {
        var (culture, background) = new DeadlineGuard().Run(_ => (CultureInfo.CurrentCulture, Thread.CurrentThread.IsBackground));

        Assert.Equal(CultureInfo.InvariantCulture, culture);
        Assert.True(background);
    }

    public void Dispose() => _folder.Dispose();

    private ICalculation Load(string name) => _folder.With(name).Load().Single(r => r.Name == name).Calculations[0];

    private static Inputs X(double x) => new(new Dictionary<string, double>(StringComparer.Ordinal) { ["x"] = x });
}
