namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What the gate's statistics exceed rarely, learned from history that took no part in the fit: block after block is left out,
/// the rest is fitted, and the block is examined with that.
/// </summary>
internal static class Thresholds
{
    private const int Blocks = 4;

    /// <summary>
    /// The share of entries flagged for each onset, before all are scaled together: fewest at the second, for what was wrong then
    /// shows at the third as well, and better. Chosen on simulated lines, no source.
    /// </summary>
    private static readonly double[] Rates = [0.005, 0.004, 0.0125];

    /// <summary>
    /// The share flagged for any onset. Later entries are flagged somewhat oftener, about 2 in 100: how far each suspicion reaches
    /// by chance is learned from the same entries.
    /// </summary>
    private const double Together = 0.0175;

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

        var blocks = HeldOut(line, history);
        List<IReadOnlyList<Reached>> compared = [.. blocks.SelectMany(b => Compared(b, fitted.Hypotheses))];
        var hypotheses = Chances.Of(fitted.Hypotheses, compared);
        var single = Single([.. compared.Select(e => Largest(e, hypotheses))]);
        var together = Learned(blocks.SelectMany(b => Judged(b, hypotheses, single)), Together, 1);
        return fitted with { Hypotheses = hypotheses, Thresholds = [.. single.Select(q => Math.Max(Least, q * together))] };
    }

    private static List<Block> HeldOut(Line line, IReadOnlyList<Round> history)
    {
        var blocks = new List<Block>();
        var size = (history.Count + Blocks - 1) / Blocks;
        for (var from = 0; from < history.Count; from += size)
        {
            var fitted = Fit.Learn(line, [.. history.Take(from), .. history.Skip(from + size)]);
            blocks.Add(new Block(fitted, [.. history.Skip(Math.Max(0, from - size)).Take(from == 0 ? size : 2 * size)], from == 0 ? Examiner.Onsets : size));
        }

        return blocks;
    }

    /// <summary>What every suspicion reached in each entry of a block, nothing being taken out.</summary>
    private static IEnumerable<IReadOnlyList<Reached>> Compared(Block block, IReadOnlyList<Hypothesis> hypotheses)
    {
        var places = hypotheses.Select((h, i) => (Key: Key(h), i)).ToDictionary(h => h.Key, h => h.i);
        var examiner = new Examiner(block.Fitted);
        return block.Entries.Select(round => examiner.Compare(round).Where(t => places.ContainsKey(Key(t.Hypothesis)))
            .Select(t => (At: (places[Key(t.Hypothesis)], t.Onset), t.Evidence)).GroupBy(t => t.At)
            .Select(g => new Reached(g.Key.Item1, g.Key.Onset, g.Max(t => t.Evidence))).ToList()).Skip(block.Before);
    }

    /// <summary>
    /// How near each entry of a block comes to its threshold when it is examined as any other: a wild value that was named flags
    /// none of the entries after it.
    /// </summary>
    private static IEnumerable<double> Judged(Block block, IReadOnlyList<Hypothesis> hypotheses, double[] single)
    {
        var chances = hypotheses.ToDictionary(Key, h => h.Chance);
        var examiner = new Examiner(block.Fitted with
        {
            Hypotheses = [.. block.Fitted.Hypotheses.Select(h => h with { Chance = chances.GetValueOrDefault(Key(h), h.Chance) })],
            Thresholds = single,
        });
        return block.Entries.Select(round => examiner.Next(round).Gate).Skip(block.Before).Select(gate => gate.Statistic / gate.Threshold);
    }

    /// <summary>A hypothesis is the same one in every fit.</summary>
    private static (int Parameter, bool Moving) Key(Hypothesis hypothesis) => (hypothesis.Parameter, hypothesis.Effects.Count > 1);

    private static double[] Largest(IReadOnlyList<Reached> entry, IReadOnlyList<Hypothesis> hypotheses) =>
        [.. Enumerable.Range(0, Examiner.Onsets).Select(k => entry.Where(r => r.Onset == k + 1).Select(r => r.Evidence / hypotheses[r.Hypothesis].Chance[k]).DefaultIfEmpty(0).Max())];

    private static double Learned(IEnumerable<double> statistics, double rate, double otherwise) => Tail.Of(statistics).Exceeded(rate) is > 0 and var exceeded ? exceeded : otherwise;

    /// <summary>An onset at which hardly anything was ever compared has taught nothing.</summary>
    private static double[] Single(List<double[]> statistics) =>
        [.. Rates.Select((rate, k) => Math.Max(Least, Learned(statistics.Select(s => s[k]), rate, Fit.Unlearned[k])))];

    /// <summary>History that took no part in a fit.</summary>
    /// <param name="Fitted">Learned from all the rest.</param>
    /// <param name="Entries">The block, and what lies before it.</param>
    /// <param name="Before">So many of them only lead up to it.</param>
    private sealed record Block(Fitted Fitted, IReadOnlyList<Round> Entries, int Before);
}
