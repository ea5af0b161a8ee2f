using MathNet.Numerics;

namespace Logbook.Checks.Signals;

/// <summary>
/// How many of m readings are the same, when the chance itself differs from walk to walk because the whole plant is steady or
/// not: the beta-binomial distribution.
/// </summary>
/// <param name="Together">How much the readings go together, from 0 (each for itself) to 1.</param>
internal sealed record Clustered(double Together)
{
    /// <summary>The chance of at least so many of m, each with a mean chance p.</summary>
    public double AtLeast(int count, int m, double p)
    {
        if (count <= 0 || p >= 1)
        {
            return 1;
        }

        var mean = Math.Max(p, 1e-4);
        var strength = (1 / Math.Max(Together, 1e-4)) - 1;
        var (a, b) = (mean * strength, (1 - mean) * strength);
        var whole = SpecialFunctions.BetaLn(a, b);
        return Math.Min(1, Enumerable.Range(count, m - count + 1)
            .Sum(k => Math.Exp(SpecialFunctions.BinomialLn(m, k) + SpecialFunctions.BetaLn(k + a, m - k + b) - whole)));
    }

    /// <summary>From how widely counts scatter around their means, beyond what separate readings would.</summary>
    public static Clustered Of(IReadOnlyList<(int Count, int M, double P)> seen)
    {
        double extra = 0, room = 0;
        foreach (var (count, m, p) in seen)
        {
            var alone = m * p * (1 - p);
            extra += Math.Pow(count - (m * p), 2) - alone;
            room += alone * (m - 1);
        }

        return new Clustered(room <= 0 ? 0 : Math.Clamp(extra / room, 0, 0.95));
    }
}
