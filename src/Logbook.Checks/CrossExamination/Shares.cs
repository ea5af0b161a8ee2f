namespace Logbook.Checks.CrossExamination;

/// <summary>
/// How likely each hypothesis is beside the others, given that physics found something: over its possible beginnings, and over
/// a plant that runs as usual or is being moved.
/// </summary>
internal static class Shares
{
    /// <summary>A hypothesis whose physics statistic is farther from the best one (1 in 100 of chi-squared with two degrees) is dropped.</summary>
    private const double Reach = 9.2;

    /// <summary>The logarithm of how much likelier it is, before any evidence, that nothing is wrong than that one reading is. Chosen on simulated lines, no source.</summary>
    private const double NothingWrong = 1;

    /// <param name="glances">The last entries, the newest last.</param>
    /// <param name="traces">What each hypothesis has matched in them.</param>
    /// <param name="counts">How much all evidence counts for, at most 1.</param>
    public static Suspicion Of(IReadOnlyList<Glance> glances, IReadOnlyList<Trace> traces, double counts)
    {
        var best = traces.Max(t => t.Physics.Statistic);
        var kept = traces.GroupBy(t => t.Hypothesis).Where(g => g.Max(t => t.Physics.Statistic) >= best - Reach && g.Any(t => t.Physics.Strength > 0)).ToList();
        var weights = kept.ConvertAll(g => Math.Log(g.Key.Prior) + Likely.Sum([.. g.GroupBy(t => t.Onset).Select(o => Likely.Sum([.. o.Select(t => Weight(glances, t, t.Wrong, counts))]) - Math.Log(o.Count()))]));
        var total = Likely.Sum(weights);
        var likeliest = kept.SelectMany(g => g).MaxBy(t => Weight(glances, t, t.Wrong, counts))!;
        var moved = traces.Where(t => t.Entries == likeliest.Entries).Max(t => Weight(glances, t, t.Real, counts));
        var nothing = NothingWrong + Math.Max(Before(glances, counts), moved);
        return new Suspicion(
            [.. kept.Select((g, i) => Suspect.Of(g.Key, g.MaxBy(t => Weight(glances, t, t.Wrong, counts))!, Math.Exp(weights[i] - total))).OrderByDescending(s => s.Share)],
            Math.Exp(nothing - Likely.Sum([nothing, total])));
    }

    private static double Weight(IReadOnlyList<Glance> glances, Trace trace, Told told, double counts) =>
        Before(glances.Take(glances.Count - trace.Entries), counts) + (counts * trace.Weight(told, trace.Hypothesis.Reach));

    /// <summary>Entries in which nothing was wrong.</summary>
    private static double Before(IEnumerable<Glance> glances, double counts) => counts * glances.Sum(g => g.Sound);
}

/// <summary>What may be wrong.</summary>
/// <param name="Suspects">The most likely first; their shares add up to one.</param>
/// <param name="Nothing">How likely it is that nothing is, beside them all: chance alone did it, or the plant really went there.</param>
internal sealed record Suspicion(IReadOnlyList<Suspect> Suspects, double Nothing)
{
    public static Suspicion None { get; } = new([], 0);

    /// <summary>Two errors at once: each with its share of both.</summary>
    public static Suspicion Together(IEnumerable<Suspect> one, IEnumerable<Suspect> other)
    {
        List<Suspect> all = [.. one, .. other];
        var total = all.Sum(s => s.Share);
        return new Suspicion(all.ConvertAll(s => s with { Share = s.Share / total }), 0);
    }
}
