namespace Logbook.Checks.Charts;

/// <summary>
/// Pettitt's sudden change: the place at which ranks before and after differ most. Below thirty readings the usual formula
/// for p is far too large, so the readings are shuffled instead, always in the same way.
/// </summary>
/// <param name="After">The change lies after this reading (from 1).</param>
/// <param name="K">The largest difference.</param>
/// <param name="P">The chance of one as large without a change.</param>
/// <param name="U">The difference after each reading.</param>
internal sealed record ChangePoint(int After, double K, double P, IReadOnlyList<double> U)
{
    private const int Few = 30;
    private const int Shuffles = 20_000;

    /// <summary>Fixed, so that one series has one answer.</summary>
    private const int Seed = 12_345;

    /// <param name="values">At least two readings in time order.</param>
    public static ChangePoint Of(IReadOnlyList<double> values)
    {
        var ranks = Ranks(values);
        var u = Differences(ranks);
        var after = Enumerable.Range(1, u.Length).MaxBy(k => Math.Abs(u[k - 1]));
        var largest = Math.Abs(u[after - 1]);
        return new ChangePoint(after, largest, values.Count < Few ? Shuffled(ranks, largest) : Asymptotic(values.Count, largest), u);
    }

    public static double Asymptotic(int n, double k) => Math.Min(1, 2 * Math.Exp(-6 * k * k / (((double)n * n * n) + ((double)n * n))));

    private static double Shuffled(double[] ranks, double largest)
    {
        var order = ranks.ToArray();
        var random = new Random(Seed);
        var atLeast = 0;
        for (var i = 0; i < Shuffles; i++)
        {
            random.Shuffle(order);
            atLeast += Differences(order).Max(Math.Abs) >= largest - 1e-9 ? 1 : 0;
        }

        return (atLeast + 1.0) / (Shuffles + 1.0);
    }

    private static double[] Differences(double[] ranks)
    {
        var sum = 0.0;
        return [.. ranks.Select((r, i) => (2 * (sum += r)) - ((i + 1) * (ranks.Length + 1.0)))];
    }

    /// <summary>Equal readings share the mean of their ranks.</summary>
    private static double[] Ranks(IReadOnlyList<double> values) =>
        [.. values.Select(v => values.Count(o => o < v) + ((values.Count(o => o == v) + 1) / 2.0))];
}
