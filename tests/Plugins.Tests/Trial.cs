using Logbook.Contracts;

namespace Logbook.Plugins.Tests;

/// <summary>Runs a calculation the way the program does: known roles within their range, defaults put in, nothing required missing.</summary>
internal static class Trial
{
    public static Values Values(ICalculation calculation, params (string Role, double Value)[] given)
    {
        var outcome = Run(calculation, given);
        var values = Assert.IsType<Values>(outcome);
        var known = calculation.Info.Outputs.Select(o => o.Id).ToHashSet(StringComparer.Ordinal);
        Assert.All(values.Numbers, n => Assert.True(known.Contains(n.Key) && double.IsFinite(n.Value), $"{n.Key} = {n.Value}"));
        Assert.True(values.Steps.Count >= values.Numbers.Count, "every result shows its working");
        return values;
    }

    /// <summary>One output of a run that must succeed.</summary>
    public static double Value(ICalculation calculation, string output, params (string Role, double Value)[] given) =>
        Values(calculation, given).Numbers[output];

    public static Refused Refusal(ICalculation calculation, params (string Role, double Value)[] given)
    {
        var refused = Assert.IsType<Refused>(Run(calculation, given));
        Assert.Contains(calculation.Info.Inputs, i => i.Role == refused.Role);
        Assert.Contains(refused.Role, refused.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refused.Sentence);
        return refused;
    }

    private static Outcome Run(ICalculation calculation, (string Role, double Value)[] given)
    {
        var inputs = calculation.Info.Inputs
            .Where(i => i.Default is not null)
            .ToDictionary(i => i.Role, i => i.Default!.Value, StringComparer.Ordinal);
        foreach (var (role, value) in given)
        {
            var info = calculation.Info.Inputs.Single(i => i.Role == role);
            Assert.InRange(value, info.Lowest, info.Highest);
            inputs[role] = value;
        }

        Assert.All(calculation.Info.Inputs.Where(i => i.Required), i => Assert.True(inputs.ContainsKey(i.Role), i.Role + " is missing"));
        return calculation.Run(new Inputs(inputs));
    }
}
