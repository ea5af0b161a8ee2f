namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What the gate's statistics exceed rarely, learned from history that took no part in the fit: block after block is left out,
/// the rest is fitted, and the block is examined with that.
/// </summary>
internal static class Thresholds
{
    private const int Blocks = 4;

    /// <summary>
    /// The share of entries flagged for each onset, before all are scaled together: fewer at the first, since what shows once may be
    /// chance and what shows again is not. Chosen on simulated lines, no source.
    /// </summary>
    private static readonly double[] Rates = [0.004, 0.009, 0.010];

    /// <summary>The share flagged for any onset. Later entries are flagged somewhat oftener than what lies between the learned ones.</summary>
    private const double Together = 0.018;

    /// <summary>
    /// 1 in 100 of chi-squared with one degree: where the instruments are better than they are declared, chance reaches less far,
    /// but so little is no reason to accuse anybody.
    /// </summary>
    private const double Least = 6.63;

    /// <summary>Learns everything, then the thresholds; with too little history the cautious ones stay.</summary>
    public static Fitted Learn(Line line, IReadOnlyList<Round> history)
    {
        var fitted = Fit.Learn(line, history);
        if (!fitted.UsesHistory)
        {
            return fitted;
        }

        var heldOut = HeldOut(line, history, fitted.Hypotheses);
        var hypotheses = Chances.Of(fitted.Hypotheses, heldOut);
        return fitted with { Hypotheses = hypotheses, Thresholds = Of([.. heldOut.Select(e => Largest(e, hypotheses))]) };
    }

    private static List<IReadOnlyList<Reached>> HeldOut(Line line, IReadOnlyList<Round> history, IReadOnlyList<Hypothesis> hypotheses)
    {
        var places = hypotheses.Select((h, i) => (Key: Key(h), i)).ToDictionary(h => h.Key, h => h.i);
        var entries = new List<IReadOnlyList<Reached>>();
        var size = (history.Count + Blocks - 1) / Blocks;
        for (var from = 0; from < history.Count; from += size)
        {
            var fitted = Fit.Learn(line, [.. history.Take(from), .. history.Skip(from + size)]);
            var examiner = new Examiner(fitted);
            foreach (var (round, i) in history.Skip(Math.Max(0, from - size)).Take(from == 0 ? size : 2 * size).Select((r, i) => (r, i)))
            {
                var reached = examiner.Compare(round).Where(t => places.ContainsKey(Key(t.Hypothesis)))
                    .Select(t => (At: (places[Key(t.Hypothesis)], t.Onset), t.Evidence)).GroupBy(t => t.At)
                    .Select(g => new Reached(g.Key.Item1, g.Key.Onset, g.Max(t => t.Evidence))).ToList();
                if (i >= (from == 0 ? Examiner.Onsets : size))
                {
                    entries.Add(reached);
                }
            }
        }

        return entries;
    }

    /// <summary>A hypothesis is the same one in every fit.</summary>
    private static (int Parameter, bool Moving) Key(Hypothesis hypothesis) => (hypothesis.Parameter, hypothesis.Effects.Count > 1);

    private static double[] Largest(IReadOnlyList<Reached> entry, IReadOnlyList<Hypothesis> hypotheses) =>
        [.. Enumerable.Range(0, Examiner.Onsets).Select(k => entry.Where(r => r.Onset == k + 1).Select(r => r.Evidence / hypotheses[r.Hypothesis].Chance[k]).DefaultIfEmpty(0).Max())];

    private static double Learned(IEnumerable<double> statistics, double rate, double otherwise) => Tail.Of(statistics).Exceeded(rate) is > 0 and var exceeded ? exceeded : otherwise;

    private static double[] Of(List<double[]> statistics)
    {
        // An onset at which hardly anything was ever compared has taught nothing.
        double[] single = [.. Rates.Select((rate, k) => Learned(statistics.Select(s => s[k]), rate, Fit.Unlearned[k]))];
        var together = Learned(statistics.Select(s => s.Select((g, k) => g / single[k]).Max()), Together, 1);
        return [.. single.Select(q => Math.Max(Least, q * together))];
    }
}
