namespace Logbook.Checks.CrossExamination;

/// <summary>
/// How far each suspicion reaches in sound history beside the others. One noise that two rows share, a lag apart, carries some
/// farther; held against one threshold, these few would set it for all.
/// </summary>
internal static class Chances
{
    /// <summary>The share of sound entries at which suspicions are compared.</summary>
    private const double Rare = 0.004;

    /// <summary>Fewer measures say nothing of a tail.</summary>
    private const int Fewest = 50;

    /// <summary>The typical suspicion counts for so many values of the tail.</summary>
    private const double Typical = 30;

    /// <summary>No suspicion is let through at less than this part of the typical threshold.</summary>
    private const double Least = 0.3;

    /// <param name="hypotheses">What may be wrong.</param>
    /// <param name="heldOut">For each entry what every suspicion reached.</param>
    public static IReadOnlyList<Hypothesis> Of(IReadOnlyList<Hypothesis> hypotheses, IReadOnlyList<IReadOnlyList<Reached>> heldOut)
    {
        var reached = heldOut.SelectMany(e => e).ToLookup(r => (r.Hypothesis, r.Onset), r => r.Evidence);
        var tails = hypotheses.Select((_, i) => Enumerable.Range(1, Examiner.Onsets).Select(onset => Learn([.. reached[(i, onset)]])).ToArray()).ToList();
        var typical = Enumerable.Range(0, Examiner.Onsets).Select(k => Middle([.. tails.Select(t => t[k].Tail).OfType<Tail>()])).ToArray();
        return [.. hypotheses.Select((h, i) => h with { Chance = [.. tails[i].Select((t, k) => Ratio(t, typical[k]))] })];
    }

    private static (Tail? Tail, double Values) Learn(double[] evidence) =>
        evidence.Length < Fewest ? (null, 0) : (Tail.Of(evidence), evidence.Length * Tail.Share);

    private static Tail? Middle(List<Tail> tails) => tails.Count == 0 ? null : new Tail(tails.Average(t => t.From), tails.Average(t => t.Mean));

    private static double Ratio((Tail? Tail, double Values) own, Tail? typical)
    {
        if (own.Tail is null || typical is null)
        {
            return 1;
        }

        double Drawn(double mine, double usual) => ((own.Values * mine) + (Typical * usual)) / (own.Values + Typical);
        var drawn = new Tail(Drawn(own.Tail.From, typical.From), Drawn(own.Tail.Mean, typical.Mean));
        var ratio = drawn.Exceeded(Rare) / typical.Exceeded(Rare);
        return double.IsFinite(ratio) ? Math.Max(Least, ratio) : 1;
    }
}

/// <summary>What a suspicion reached in one entry.</summary>
/// <param name="Hypothesis">Its place among the hypotheses.</param>
internal sealed record Reached(int Hypothesis, int Onset, double Evidence);
