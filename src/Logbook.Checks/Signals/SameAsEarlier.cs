using System.Runtime.InteropServices;

namespace Logbook.Checks.Signals;

/// <summary>
/// Walks that repeat an earlier one more than is usual here. What is usual is measured on this round itself: for each point
/// and each distance in walks, how often two readings are the same, whoever took them. Points that mostly repeat are left
/// out: they tell nothing.
/// </summary>
public static class SameAsEarlier
{
    /// <summary>Two days of hourly walks: copying goes to a sheet at hand.</summary>
    private const int Farthest = 48;

    private const int FewestWalks = 60;
    private const int FewestPoints = 6;
    private const double MostlyRepeats = 0.6;

    // What is commoner than this is never flagged, and only counts among the tests.
    private const double Rare = 0.01;

    // Set on simulated operators, so that an honest month is flagged in 1 of 100.
    private const double Level = 0.005;

    // What repeats less than this is no copy, however rare it is.
    private const double LeastShare = 0.6;

    /// <summary>The signals among the walks from <paramref name="from"/> on; earlier ones are history.</summary>
    /// <param name="walks">Walks of one round in time order.</param>
    public static IReadOnlyList<SameSignal> Find(IReadOnlyList<Walk> walks, DateTimeOffset from)
    {
        if (walks.Count < FewestWalks)
        {
            return [];
        }

        // Years of walks against the two days before each: every distance stands for itself, on all cores.
        double[][] values = [.. walks.Select(w => w.Values.Select(v => v ?? double.NaN).ToArray())];
        var distances = Enumerable.Range(1, Math.Min(Farthest, walks.Count / 4)).AsParallel().AsOrdered().Select(lag => AtDistance(walks, values, lag, from)).ToList();
        List<Pair> rare = [.. distances.SelectMany(d => d.Rare)];
        var adjusted = ManyTests.Adjusted([.. rare.Select(p => p.Chance)], distances.Sum(d => d.Asked));
        return
        [
            .. rare.Select((pair, i) => (Pair: pair, Adjusted: adjusted[i]))
                .Where(x => x.Adjusted < Level && x.Pair.Equal >= LeastShare * x.Pair.Of)
                .GroupBy(x => x.Pair.Walk).Select(g => g.MinBy(x => x.Pair.Chance))
                .Select(x => new SameSignal(
                    walks[x.Pair.Walk], walks[x.Pair.Walk - x.Pair.Lag], x.Pair.Equal, x.Pair.Of, x.Pair.Usual, MostElsewhere(walks, values, x.Pair), x.Adjusted))
                .OrderBy(s => s.Walk.At),
        ];
    }

    /// <param name="Walk">Index of the later walk; the earlier one stands <paramref name="Lag"/> before it.</param>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Pair(int Walk, int Lag, int Equal, int Of, double Usual, double Chance = 1);

    /// <summary>How many pairs there are among the walks asked for, and those of them that are rare by chance.</summary>
    private static (int Asked, IReadOnlyList<Pair> Rare) AtDistance(IReadOnlyList<Walk> walks, double[][] values, int lag, DateTimeOffset from)
    {
        var pairs = Pairs(values, lag).ToList();
        var usual = Usual(pairs);
        var asked = pairs.Where(p => walks[p.Walk].At >= from).ToList();
        return (asked.Count, [.. asked.Select(p => p with { Chance = usual(p) }).Where(p => p.Chance < Rare)]);
    }

    /// <summary>The most that any pair at that distance has in common in another shift. Asked of what is flagged alone: it looks through all of them.</summary>
    private static int MostElsewhere(IReadOnlyList<Walk> walks, double[][] values, Pair flagged) =>
        Pairs(values, flagged.Lag).Where(p => !walks[p.Walk].Shift.Equals(walks[flagged.Walk].Shift, StringComparison.Ordinal)).Select(p => p.Equal).DefaultIfEmpty(0).Max();

    /// <param name="values">A row for each walk; NaN where nothing was read.</param>
    private static IEnumerable<Pair> Pairs(double[][] values, int lag)
    {
        var rates = Rates(values, lag);
        return Enumerable.Range(lag, values.Length - lag).Select(i => Compare(values, i, lag, rates)).Where(p => p.Of >= FewestPoints);
    }

    private static Pair Compare(double[][] values, int index, int lag, double[] rates)
    {
        var (walk, earlier) = (values[index], values[index - lag]);
        int equal = 0, of = 0;
        double usual = 0;
        for (var column = 0; column < rates.Length; column++)
        {
            var (now, then) = (walk[column], earlier[column]);
            if (rates[column] <= MostlyRepeats && !double.IsNaN(now) && !double.IsNaN(then))
            {
                equal += now == then ? 1 : 0;
                of++;
                usual += rates[column];
            }
        }

        return new Pair(index, lag, equal, of, usual);
    }

    /// <summary>Each point's own share of repeats at that distance.</summary>
    private static double[] Rates(double[][] values, int lag)
    {
        var rates = new double[values[0].Length];
        for (var column = 0; column < rates.Length; column++)
        {
            int equal = 0, of = 0;
            for (var i = lag; i < values.Length; i++)
            {
                var (now, then) = (values[i][column], values[i - lag][column]);
                if (!double.IsNaN(now) && !double.IsNaN(then))
                {
                    equal += now == then ? 1 : 0;
                    of++;
                }
            }

            // Half a repeat more than seen: a point that never repeated yet may do so.
            rates[column] = of == 0 ? 1 : (equal + 0.5) / (of + 1);
        }

        return rates;
    }

    /// <summary>The chance of a pair's count; how counts scatter is learned twice, for what stands out by itself must not teach what is usual.</summary>
    private static Func<Pair, double> Usual(List<Pair> pairs)
    {
        var first = Remembered(Clustered.Of([.. pairs.Select(Count)]));
        return Remembered(Clustered.Of([.. pairs.Where(p => first(p) > 0.001).Select(Count)]));
    }

    private static (int Count, int M, double P) Count(Pair pair) => (pair.Equal, pair.Of, pair.Usual / pair.Of);

    private static Func<Pair, double> Remembered(Clustered usual)
    {
        var known = new Dictionary<(int, int, double), double>();
        return pair =>
        {
            var count = Count(pair);
            return known.TryGetValue(count, out var chance) ? chance : known[count] = usual.AtLeast(count.Count, count.M, count.P);
        };
    }
}
