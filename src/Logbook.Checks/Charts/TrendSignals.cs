namespace Logbook.Checks.Charts;

/// <summary>
/// The patterns that are worth their false alarms: beyond three sigma, nine on one side, six rising or falling, fifteen too
/// quiet, and a stuck value by its resolution. Where neighbours resemble each other only single readings are judged, beside
/// what they add to the one before. Each is told once per episode.
/// </summary>
internal static class TrendSignals
{
    private const double Odd = 0.005;
    private const int FewestEqual = 4;

    public static IReadOnlyList<TrendSignal> Of(IndividualsChart chart, double centre, double sigma, double[] values, List<TrendPoint> points, double resolution)
    {
        double[] z = [.. values.Select(v => (v - centre) / sigma)];
        IEnumerable<(string Rule, IEnumerable<int> At)> rules = chart.Remembers
            ? [("beyond-3-sigma", RunRules.BeyondThreeSigma(z)), ("sudden", Sudden(chart, values))]
            :
            [
                ("beyond-3-sigma", RunRules.BeyondThreeSigma(z)), ("nine-on-one-side", RunRules.OneSide(z)),
                ("six-steadily", RunRules.Steadily(z)), ("fifteen-too-quiet", RunRules.TooQuiet(z)),
            ];
        return
        [
            .. rules.Append((Rule: "stuck", At: StuckAt(chart, values, resolution)))
                .SelectMany(r => Episodes(r.At).Select(i => new TrendSignal(r.Rule, i, points[i - 1].At)))
                .OrderBy(s => s.Index).ThenBy(s => s.Rule, StringComparer.Ordinal),
        ];
    }

    /// <summary>A reading that goes far beyond what the one before it lets expect.</summary>
    private static IEnumerable<int> Sudden(IndividualsChart chart, double[] values)
    {
        var residuals = chart.Residuals(values);
        var sigma = Spread.RobustSigma(residuals, 0);
        return sigma == 0 ? [] : Enumerable.Range(2, residuals.Count).Where(i => Math.Abs(residuals[i - 2]) > 3.5 * sigma);
    }

    private static IEnumerable<int> StuckAt(IndividualsChart chart, double[] values, double resolution)
    {
        var repeat = Stuck.ChanceOfRepeat(resolution, chart.SigmaMr);
        if (resolution <= 0 || repeat >= 0.5)
        {
            return [];
        }

        var length = Enumerable.Range(FewestEqual, values.Length + 1).First(k => Stuck.ChanceOfRun(resolution, chart.SigmaMr, k, Math.Max(values.Length, k)) < Odd || k > values.Length);
        return Stuck.FlatLine(values, length);
    }

    /// <summary>The first of each stretch; a single reading just within does not end it.</summary>
    private static IEnumerable<int> Episodes(IEnumerable<int> at)
    {
        var last = -2;
        foreach (var i in at)
        {
            if (i > last + 2)
            {
                yield return i;
            }

            last = i;
        }
    }
}
