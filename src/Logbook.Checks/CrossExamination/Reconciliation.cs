using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// Linear balances A x = b against readings y of known uncertainty: do they agree as a whole, and if not, how far would each
/// reading alone explain it. A reading that is no number, or has no uncertainty of its own, counts as not measured and is
/// projected out.
/// </summary>
internal static class Reconciliation
{
    private const double Alpha = 0.05;

    /// <summary>A reading with less of its variance in the adjustments than this cannot be checked by any balance.</summary>
    private const double Unchecked = 1e-9;

    public static Reconciled Of(Matrix<double> a, Vector<double> b, Vector<double> y, Vector<double> u)
    {
        var measured = Enumerable.Range(0, y.Count).Where(i => double.IsFinite(y[i]) && double.IsFinite(u[i]) && u[i] > 0).ToArray();
        if (measured.Length == 0)
        {
            return Reconciled.Nothing("no reading to compare", y.Count);
        }

        var projected = Projection.Of(a, b, measured);
        var x = Vector<double>.Build.Dense([.. measured.Select(i => y[i])]);
        var v = Vector<double>.Build.Dense([.. measured.Select(i => u[i] * u[i])]);
        var h = projected.A * Matrix<double>.Build.DiagonalOfDiagonalVector(v) * projected.A.Transpose();
        var rows = Independent.Rows(h);
        return rows.Length == 0
            ? Reconciled.Nothing("no balance compares these readings", y.Count)
            : Judge(Balances.Of(projected, rows, x, v), measured, x, v, y.Count);
    }

    private static Reconciled Judge(Balances balances, int[] measured, Vector<double> x, Vector<double> v, int count)
    {
        var degrees = balances.Residual.Count;
        var statistic = balances.Glr.Distance(balances.Residual);
        var tests = new ReadingTest[count];
        Array.Fill(tests, ReadingTest.NotChecked);
        var adjustment = v.PointwiseMultiply(balances.A.TransposeThisAndMultiply(balances.Glr.Inverse * balances.Residual));
        for (var j = 0; j < measured.Length; j++)
        {
            var tried = balances.Glr.Of(balances.A.Column(j), balances.Residual);
            var checkedShare = tried.Strength * v[j];
            tests[measured[j]] = checkedShare > Unchecked
                ? new ReadingTest(true, x[j] - adjustment[j], tried.Root, tried.Statistic, tried.Size, 0, Visible(checkedShare, v[j], measured.Length))
                : ReadingTest.NotChecked with { Adjusted = x[j] };
        }

        return new Reconciled(statistic, degrees, ChiSquared.InvCDF(degrees, 1 - Alpha), Tails.ChiSquared(statistic, degrees), Share(tests), Ties(balances, measured, v), Word(balances));
    }

    /// <summary>With no reading that fits better than another the shares are equal: a tie shows as a tie.</summary>
    private static ReadingTest[] Share(ReadingTest[] tests)
    {
        var most = tests.Where(t => t.Checked).Select(t => t.Glr).DefaultIfEmpty(0).Max();
        var sum = tests.Where(t => t.Checked).Sum(t => Math.Exp((t.Glr - most) / 2));
        return [.. tests.Select(t => t.Checked ? t with { Share = Math.Exp((t.Glr - most) / 2) / sum } : t)];
    }

    /// <summary>What the measurement test would find in four of five cases.</summary>
    private static double Visible(double checkedShare, double v, int n) =>
        (Criticals.Measurement(n) + Normal.InvCDF(0, 1, 0.8)) * Math.Sqrt(v / checkedShare);

    /// <summary>Readings whose columns are proportional: no balance can tell them apart.</summary>
    private static List<int[]> Ties(Balances balances, int[] measured, Vector<double> v)
    {
        var columns = Enumerable.Range(0, measured.Length).Select(j => balances.A.Column(j) * Math.Sqrt(v[j])).ToList();
        var groups = new List<List<int>>();
        foreach (var j in Enumerable.Range(0, measured.Length).Where(j => columns[j].L2Norm() > 0))
        {
            var group = groups.Find(g => Parallel(columns[g[0]], columns[j]));
            if (group is null)
            {
                groups.Add([j]);
            }
            else
            {
                group.Add(j);
            }
        }

        return [.. groups.Where(g => g.Count > 1).Select(g => g.Select(j => measured[j]).ToArray())];
    }

    private static bool Parallel(Vector<double> a, Vector<double> b) => 1 - Math.Abs(a.DotProduct(b) / (a.L2Norm() * b.L2Norm())) < 1e-12;

    private static string? Word(Balances balances) => balances.Contradictory ? "the balances contradict each other before any reading" : null;
}

/// <summary>What the balances say.</summary>
/// <param name="Statistic">The global test's; chi-squared with so many degrees when only chance is at work.</param>
/// <param name="Degrees">Independent balances.</param>
/// <param name="Critical">At five in a hundred.</param>
/// <param name="P">The chance of more.</param>
/// <param name="Readings">One for each reading, in their order.</param>
/// <param name="Ties">Groups of readings that no balance can tell apart.</param>
/// <param name="Word">Why less can be said than usual; null when nothing is in the way.</param>
internal sealed record Reconciled(
    double Statistic, int Degrees, double Critical, double P, IReadOnlyList<ReadingTest> Readings, IReadOnlyList<int[]> Ties, string? Word)
{
    public static Reconciled Nothing(string word, int readings) => new(0, 0, 0, 1, [.. Enumerable.Repeat(ReadingTest.NotChecked, readings)], [], word);
}

/// <summary>How far one reading alone would explain the disagreement.</summary>
/// <param name="Checked">False when no balance can check it.</param>
/// <param name="Adjusted">The value that fits the balances best, all readings moved together.</param>
/// <param name="Z">The measurement test's.</param>
/// <param name="Glr">The likelihood test's.</param>
/// <param name="Bias">How wrong it would be.</param>
/// <param name="Share">Of the likelihood, among all checked readings.</param>
/// <param name="SmallestVisible">The error that would be found in four of five cases.</param>
internal sealed record ReadingTest(bool Checked, double Adjusted, double Z, double Glr, double Bias, double Share, double SmallestVisible)
{
    public static ReadingTest NotChecked { get; } = new(false, double.NaN, 0, 0, 0, 0, double.PositiveInfinity);
}
