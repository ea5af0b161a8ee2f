using System.Globalization;
using Logbook.Checks.Charts;

namespace CrossExamination.Tests.Charts;

/// <summary>
/// The rules are Nelson's (J. Quality Technology 16(4), 1984; from memory) and Western Electric's (handbook of 1956). The
/// sequences are invented; each has one pattern.
/// </summary>
public sealed class RunRuleTests
{
    private static readonly Dictionary<string, Func<IReadOnlyList<double>, IEnumerable<int>>> Rules = new(StringComparer.Ordinal)
    {
        ["N1"] = RunRules.BeyondThreeSigma,
        ["N2"] = z => RunRules.OneSide(z),
        ["N3"] = RunRules.Steadily,
        ["N4"] = RunRules.Alternating,
        ["N5"] = RunRules.TwoOfThree,
        ["N6"] = RunRules.FourOfFive,
        ["N7"] = RunRules.TooQuiet,
        ["N8"] = RunRules.Mixture,
    };

    [Theory]
    [InlineData("0.2 -0.5 0.9 -1.2 0.4 3.1 -0.3 0.6", "N1 6")]
    [InlineData("0.2 -0.5 3.0 -0.3 0.6", "")]
    [InlineData("-0.4 0.3 0.8 0.2 1.1 0.5 0.1 0.9 0.4 0.6 -0.2", "N2 10")]
    [InlineData("0.3 0.8 0.2 1.1 0.0 0.5 0.1 0.9 0.4 0.6", "")]
    [InlineData("0.5 -1.5 -1.1 -0.4 0.1 0.7 1.3 0.2", "N3 7")]
    [InlineData("-1.5 -1.1 -0.4 -0.4 0.7 1.3", "")]
    [InlineData("0.5 -0.3 0.4 -0.6 0.2 -0.5 0.7 -0.1 0.6 -0.4 0.3 -0.2 0.8 -0.7", "N4 14")]
    [InlineData("0.1 2.3 -0.4 2.1 0.3", "N5 4")]
    [InlineData("0.1 2.3 -2.2 0.3 -0.2", "")]
    [InlineData("-0.2 1.2 1.6 0.4 1.1 1.3 -0.5", "N6 6")]
    [InlineData("0.5 -0.4 0.2 -0.9 0.3 0.7 -0.6 -0.1 0.8 0.4 -0.3 0.6 -0.2 -0.5 0.1 1.5", "N7 15")]
    [InlineData("0.2 1.4 -1.3 -1.8 1.2 1.9 -1.1 -1.6 1.7 0.3", "N8 9")]
    public void Each_sequence_fires_its_rule_and_no_other(string sequence, string expected)
    {
        double[] z = [.. sequence.Split(' ').Select(t => double.Parse(t, CultureInfo.InvariantCulture))];

        var fired = Rules.SelectMany(r => r.Value(z).Select(i => string.Create(CultureInfo.InvariantCulture, $"{r.Key} {i}")));

        Assert.Equal(expected.Length == 0 ? [] : [expected], fired, StringComparer.Ordinal);
    }

    [Fact]
    public void Eight_on_one_side_is_the_older_rule()
    {
        Assert.Equal([9, 10], RunRules.OneSide([-0.4, 0.3, 0.8, 0.2, 1.1, 0.5, 0.1, 0.9, 0.4, 0.6, -0.2], 8));
    }
}
