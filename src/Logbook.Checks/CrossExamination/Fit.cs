using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>Learns from good history what to expect of each row and reading, and how their surprises go together.</summary>
internal static class Fit
{
    /// <summary>Below this many entries only physics speaks.</summary>
    public const int FewestEntries = 150;

    /// <summary>A reading never counts as steadier than this share of its uncertainty.</summary>
    public const double LeastOfU = 0.3;

    /// <summary>
    /// Used until history gives better. Wide, about 4.5 standard deviations: until then nobody knows how far the site's constants
    /// stand off by themselves.
    /// </summary>
    public static readonly double[] Unlearned = [20, 22, 22];

    /// <summary>Without a single entry nothing is known of the rows, and nothing is said.</summary>
    public static readonly double[] Silent = [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity];

    /// <param name="line">What stands in relation to what.</param>
    /// <param name="entries">In time order.</param>
    public static Fitted Learn(Line line, IReadOnlyList<Round> entries)
    {
        var usualChanges = UsualChanges.Learn(line, entries);
        var steadiness = new Steadiness(line, usualChanges);
        var history = entries.Select(steadiness.Heard).ToList();
        var learning = new Learning(line, history, UsualSensitivities(line, history));
        var learned = learning.Of();
        double[] readings = [.. learned.Scale.Skip(line.Rows.Count)];
        var together = line.Readings == 0 ? learned.Quiet : learned.Quiet.SubMatrix(line.Rows.Count, line.Readings, line.Rows.Count, line.Readings);
        return learned with
        {
            Hypotheses = Hypothesis.All(line, readings, Moved.Of(line, learning.Scaled(learned.Scale), readings, together)),
            UsualChanges = usualChanges,
        };
    }

    private static Matrix<double> UsualSensitivities(Line line, IReadOnlyList<Round> history)
    {
        var sum = Matrix<double>.Build.Dense(line.Rows.Count, line.Parameters.Count);
        var count = new int[line.Rows.Count];
        foreach (var round in history)
        {
            for (var k = 0; k < line.Rows.Count; k++)
            {
                if (round.Rows[k] is { } row)
                {
                    count[k]++;
                    foreach (var s in row.Sensitivities)
                    {
                        sum[k, s.Parameter] += s.Slope;
                    }
                }
            }
        }

        return sum.RowsBy([.. count.Select(c => Math.Max(1.0, c))]);
    }

    /// <summary>Each row by its own divisor; no rows are no error.</summary>
    public static Matrix<double> RowsBy(this Matrix<double> rows, IReadOnlyList<double> by) =>
        rows.RowCount == 0 ? rows : rows.MapIndexed((k, _, v) => v / by[k]);
}
