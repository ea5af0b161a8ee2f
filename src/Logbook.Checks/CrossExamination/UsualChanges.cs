using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>How each reading usually changes from one time it is taken to the next, and which readings change together.</summary>
/// <param name="Sizes">Never below the reading's uncertainty; without bound for one that was hardly ever taken.</param>
/// <param name="Together">Correlations of the changes, from entries that had both.</param>
internal sealed record UsualChanges(IReadOnlyList<double> Sizes, Matrix<double> Together)
{
    private const double Bound = 3;
    private const int FewestPairs = 20;

    public static UsualChanges Learn(Line line, IReadOnlyList<Round> history)
    {
        double[][] changes = [.. Enumerable.Range(0, line.Readings).Select(i => Changes(history, i))];
        double[] sizes =
        [
            .. changes.Select((c, i) => c.Count(double.IsFinite) < 2 ? double.PositiveInfinity : Math.Max(Robust.Sigma(c.Where(double.IsFinite)), line.Parameters[i].U)),
        ];
        double[][] bounded = [.. changes.Select((c, i) => c.Select(v => Math.Clamp(v / sizes[i], -Bound, Bound)).ToArray())];
        return new UsualChanges(sizes, Matrix<double>.Build.Dense(line.Readings, line.Readings, (i, j) => Correlation(bounded[i], bounded[j])));
    }

    /// <summary>For each entry the change since the reading was last taken; NaN when it was not taken, or never before.</summary>
    private static double[] Changes(IReadOnlyList<Round> history, int reading)
    {
        var last = double.NaN;
        return
        [
            .. history.Select(r =>
            {
                var change = r.Values[reading] - last;
                last = double.IsFinite(r.Values[reading]) ? r.Values[reading] : last;
                return change;
            }),
        ];
    }

    private static double Correlation(double[] a, double[] b)
    {
        var both = a.Zip(b).Where(p => double.IsFinite(p.First) && double.IsFinite(p.Second)).ToList();
        var size = Math.Sqrt(both.Sum(p => p.First * p.First) * both.Sum(p => p.Second * p.Second));
        return both.Count < FewestPairs || size == 0 ? 0 : both.Sum(p => p.First * p.Second) / size;
    }
}
