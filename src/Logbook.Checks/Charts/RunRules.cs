namespace Logbook.Checks.Charts;

/// <summary>
/// Patterns of readings in sigma from the centre. All comparisons are strict; a reading on the centre line ends a run on one
/// side; a tie ends a rise or fall; k of n fires only when the newest is itself beyond the line. Each gives the readings
/// (from 1) at which the pattern stands, once for every reading while it lasts.
/// </summary>
internal static class RunRules
{
    /// <summary>One beyond three sigma.</summary>
    public static IEnumerable<int> BeyondThreeSigma(IReadOnlyList<double> z) => Where(z, 1, w => Math.Abs(w[^1]) > 3);

    /// <summary>So many in a row on one side of the centre: nine, or eight in the older book.</summary>
    public static IEnumerable<int> OneSide(IReadOnlyList<double> z, int count = 9) => Where(z, count, w => w.All(v => v > 0) || w.All(v => v < 0));

    /// <summary>Six in a row, each above (or each below) the one before.</summary>
    public static IEnumerable<int> Steadily(IReadOnlyList<double> z) => Where(z, 6, w => Steps(w).All(s => s > 0) || Steps(w).All(s => s < 0));

    /// <summary>Fourteen in a row that go up and down in turn.</summary>
    public static IEnumerable<int> Alternating(IReadOnlyList<double> z) => Where(z, 14, w =>
    {
        var steps = Steps(w).ToList();
        return steps.Skip(1).Zip(steps).All(s => s.First * s.Second < 0);
    });

    /// <summary>Two of three beyond two sigma on the same side.</summary>
    public static IEnumerable<int> TwoOfThree(IReadOnlyList<double> z) => Most(z, 3, 2, 2);

    /// <summary>Four of five beyond one sigma on the same side.</summary>
    public static IEnumerable<int> FourOfFive(IReadOnlyList<double> z) => Most(z, 5, 4, 1);

    /// <summary>Fifteen in a row within one sigma: quieter than the past.</summary>
    public static IEnumerable<int> TooQuiet(IReadOnlyList<double> z) => Where(z, 15, w => w.All(v => Math.Abs(v) < 1));

    /// <summary>Eight in a row beyond one sigma, on either side.</summary>
    public static IEnumerable<int> Mixture(IReadOnlyList<double> z) => Where(z, 8, w => w.All(v => Math.Abs(v) > 1));

    private static IEnumerable<int> Most(IReadOnlyList<double> z, int of, int count, double line) =>
        Where(z, count, of, w => Math.Abs(w[^1]) > line && w.Count(v => v * Math.Sign(w[^1]) > line) >= count);

    private static IEnumerable<int> Where(IReadOnlyList<double> z, int window, Func<IReadOnlyList<double>, bool> pattern) => Where(z, window, window, pattern);

    /// <summary>A window may be shorter than <paramref name="longest"/> at the start of the series, never than <paramref name="shortest"/>.</summary>
    private static IEnumerable<int> Where(IReadOnlyList<double> z, int shortest, int longest, Func<IReadOnlyList<double>, bool> pattern) =>
        Enumerable.Range(shortest, Math.Max(0, z.Count - shortest + 1)).Where(i => pattern([.. z.Skip(Math.Max(0, i - longest)).Take(Math.Min(i, longest))]));

    private static IEnumerable<double> Steps(IReadOnlyList<double> w) => w.Skip(1).Zip(w, (a, b) => a - b);
}
