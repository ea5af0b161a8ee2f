namespace Logbook.Checks.CrossExamination;

/// <summary>
/// How likely each hypothesis is beside the others, given that physics found something: over its possible beginnings, and over
/// a plant that runs as usual or is being moved.
/// </summary>
internal static class Shares
{
    private static readonly double LogUsual = Math.Log(0.9);
    private static readonly double LogMoved = Math.Log(0.1);

    /// <summary>A hypothesis whose physics statistic is farther from the best one (1 in 100 of chi-squared with two degrees) is dropped.</summary>
    private const double Reach = 9.2;

    public static IReadOnlyList<Suspect> Of(IReadOnlyList<Glance> glances, IReadOnlyList<Trace> traces)
    {
        var best = traces.Max(t => t.Physics.Statistic);
        var kept = traces.GroupBy(t => t.Hypothesis).Where(g => g.Max(t => t.Physics.Statistic) >= best - Reach && g.Any(t => t.Physics.Strength > 0)).ToList();
        var weights = kept.ConvertAll(g => Math.Log(g.Key.Prior) + LogSum([.. g.GroupBy(t => t.Onset).Select(o => LogSum([.. o.Select(t => Weight(glances, t))]) - Math.Log(o.Count()))]));
        var total = LogSum(weights);
        return
        [
            .. kept.Select((g, i) => Suspect.Of(g.Key, g.MaxBy(t => Weight(glances, t))!, Math.Exp(weights[i] - total))).OrderByDescending(s => s.Share),
        ];
    }

    private static double Weight(IReadOnlyList<Glance> glances, Trace trace)
    {
        var reach = trace.Hypothesis.Reach * trace.Hypothesis.Reach;
        var before = glances.Take(glances.Count - trace.Entries).Sum(g => LogSum([LogUsual + Base(g.Quiet), LogMoved + Base(g.Changed)]));
        var since = glances.Skip(glances.Count - trace.Entries).ToList();
        return before + LogSum(
        [
            LogUsual + since.Sum(g => Base(g.Quiet)) + Gain(trace.Quiet, reach),
            LogMoved + since.Sum(g => Base(g.Changed)) + Gain(trace.Changed, reach),
        ]);
    }

    private static double Base(View? view) => view?.Base ?? 0;

    /// <summary>How much better the surprises are explained, the size of the error being unknown within its reach.</summary>
    private static double Gain(Tried tried, double reach) =>
        (tried.Match * tried.Match / (2 * (tried.Strength + (1 / reach)))) - (Math.Log(1 + (reach * tried.Strength)) / 2);

    private static double LogSum(IReadOnlyList<double> logs)
    {
        var most = logs.Max();
        return most + Math.Log(logs.Sum(l => Math.Exp(l - most)));
    }
}
