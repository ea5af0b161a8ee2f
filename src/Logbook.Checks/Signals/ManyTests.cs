namespace Logbook.Checks.Signals;

/// <summary>
/// Many tests at once: p-values adjusted so that of what is flagged below q no more than a share q is false on average
/// (Benjamini and Hochberg, Journal of the Royal Statistical Society B 57, 1995, 289-300).
/// </summary>
internal static class ManyTests
{
    /// <summary>Adjusted values in the order in which the p-values were given.</summary>
    /// <param name="tests">How many tests there were: those whose p-values are not given had larger ones.</param>
    public static IReadOnlyList<double> Adjusted(IReadOnlyList<double> p, int? tests = null)
    {
        var adjusted = new double[p.Count];
        var least = 1.0;
        var rank = p.Count;
        foreach (var index in Enumerable.Range(0, p.Count).OrderByDescending(i => p[i]))
        {
            least = Math.Min(least, p[index] * (tests ?? p.Count) / rank);
            adjusted[index] = least;
            rank--;
        }

        return adjusted;
    }
}
