namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Which reading, taken a second time, would settle the matter: the one after which the largest share is expected to be
/// largest. A second reading clears or convicts its own; it does so the better, the larger the error against what the reading
/// itself is uncertain by.
/// </summary>
internal static class Settling
{
    /// <summary>What a second reading must be expected to add to be worth asking for.</summary>
    private const double Worthwhile = 0.05;

    /// <returns>The reading's place among the parameters; null when no second reading would help.</returns>
    public static int? Of(Line line, IReadOnlyList<Suspect> suspects)
    {
        if (suspects.Count == 0)
        {
            return null;
        }

        var shares = suspects.GroupBy(s => s.Parameter).ToDictionary(g => g.Key, g => g.Sum(s => s.Share));
        var now = shares.Values.Max();
        var best = suspects.Where(s => line.Parameters[s.Parameter].Role == Role.Reading)
            .Select(s => (s.Parameter, Expected: Expected(line, shares, s)))
            .OrderByDescending(e => e.Expected).FirstOrDefault();
        return best.Expected > now + Worthwhile ? best.Parameter : null;
    }

    private static double Expected(Line line, Dictionary<int, double> shares, Suspect suspect)
    {
        var own = shares[suspect.Parameter];
        var other = shares.Where(s => s.Key != suspect.Parameter).Select(s => s.Value).DefaultIfEmpty(0).Max();
        var u = line.Parameters[suspect.Parameter].U;
        var clear = 1 - Math.Exp(-suspect.Bias * suspect.Bias / (4 * u * u));
        return (clear * (own + other)) + ((1 - clear) * shares.Values.Max());
    }
}
