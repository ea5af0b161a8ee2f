namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What the gate's statistics exceed rarely, learned from history that took no part in the fit: block after block is left out,
/// the rest is fitted, and the block is examined with that.
/// </summary>
internal static class Thresholds
{
    private const int Blocks = 4;

    /// <summary>The share of entries flagged for each onset, before all are scaled together.</summary>
    private static readonly double[] Rates = [0.012, 0.007, 0.007];

    /// <summary>The share flagged for any onset.</summary>
    private const double Together = 0.02;

    /// <summary>Learns everything, then the thresholds; with too little history the cautious ones stay.</summary>
    public static Fitted Learn(Line line, IReadOnlyList<Round> history)
    {
        var fitted = Fit.Learn(line, history);
        return fitted.UsesHistory ? fitted with { Thresholds = Of(HeldOut(line, history)) } : fitted;
    }

    private static List<double[]> HeldOut(Line line, IReadOnlyList<Round> history)
    {
        var statistics = new List<double[]>();
        var size = (history.Count + Blocks - 1) / Blocks;
        for (var from = 0; from < history.Count; from += size)
        {
            var fitted = Fit.Learn(line, [.. history.Take(from), .. history.Skip(from + size)]);
            var examiner = new Examiner(fitted);
            foreach (var (round, i) in history.Skip(Math.Max(0, from - size)).Take(from == 0 ? size : 2 * size).Select((r, i) => (r, i)))
            {
                var gate = examiner.Measure(round);
                if (i >= (from == 0 ? Examiner.Onsets : size) && gate.Statistics.Count == Examiner.Onsets)
                {
                    statistics.Add([.. gate.Statistics]);
                }
            }
        }

        return statistics;
    }

    private static double[] Of(List<double[]> statistics)
    {
        double[] single = [.. Rates.Select((rate, k) => Tail.Of(statistics.Select(s => s[k])).Exceeded(rate))];
        var together = Tail.Of(statistics.Select(s => s.Select((g, k) => g / single[k]).Max())).Exceeded(Together);
        return [.. single.Select(q => q * together)];
    }
}
