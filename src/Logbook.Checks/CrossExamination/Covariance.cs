using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>
/// How scaled surprises go together, learned robustly and drawn towards what the uncertainties alone would give: the more, the
/// fewer entries had both.
/// </summary>
internal sealed record Covariance(Matrix<double> Quiet, Matrix<double> Changed, double LeftOut)
{
    private const int Rounds = 4;
    private const double Far = 0.995;
    private const double Towards = 50;
    private const double LeastMovement = 0.02;

    /// <summary>The part of what was learned of two places together that is not believed. Chosen on simulated lines, no source.</summary>
    private const double Diagonal = 0.02;

    /// <summary>A moved plant: the movement 25 times the usual, the reading's own part ten times.</summary>
    private const double MoreMovement = 24;

    private const double MoreReading = 9;

    public static Covariance Learn(Line line, List<double[]> surprises, List<double> scale, Matrix<double> scaled)
    {
        var z = surprises.ConvertAll(s => s.Select((v, p) => v / scale[p]).ToArray());
        var own = Own(line, scale);
        var kept = Enumerable.Repeat(z.Count >= Fit.FewestEntries, z.Count).ToArray();
        var quiet = Blend(line, z, kept, own, scale, scaled);
        for (var round = 0; round < Rounds && z.Count >= Fit.FewestEntries; round++)
        {
            kept = Near(z, quiet);
            quiet = Blend(line, z, kept, own, scale, scaled);
        }

        var movement = Movement(line, quiet, own);
        var changed = quiet.Clone();
        for (var i = 0; i < line.Readings; i++)
        {
            for (var j = 0; j < line.Readings; j++)
            {
                changed[line.Rows.Count + i, line.Rows.Count + j] += (MoreMovement * movement[i, j]) + (i == j ? MoreReading * own[i] : 0);
            }
        }

        return new Covariance(quiet, changed, z.Count < Fit.FewestEntries ? 0 : kept.Count(k => !k) / (double)z.Count);
    }

    /// <summary>The part of each reading's usual surprise that is its own uncertainty, squared.</summary>
    private static double[] Own(Line line, List<double> scale) =>
        [.. Enumerable.Range(0, line.Readings).Select(i => Math.Pow(line.Parameters[i].U / scale[line.Rows.Count + i], 2))];

    private static Matrix<double> Blend(Line line, List<double[]> z, bool[] kept, double[] own, List<double> scale, Matrix<double> scaled)
    {
        var (learned, count) = Pairwise(z, kept, line.Width);
        var physics = Physics(line, learned, own, scale, scaled);
        var blend = learned.MapIndexed((i, j, m) =>
        {
            var share = Towards / (Towards + count[i, j]);
            return ((1 - share) * (i == j ? m : (1 - Diagonal) * m)) + (share * physics[i, j]);
        });
        return Positive.Of(blend, 0.01);
    }

    /// <summary>Correlations come from the entries that had both.</summary>
    private static (Matrix<double> Covariance, Matrix<double> Count) Pairwise(List<double[]> z, bool[] kept, int width)
    {
        var sum = Matrix<double>.Build.Dense(width, width);
        var count = Matrix<double>.Build.Dense(width, width);
        for (var t = 0; t < z.Count; t++)
        {
            int[] there = kept[t] ? [.. Enumerable.Range(0, width).Where(p => double.IsFinite(z[t][p]))] : [];
            foreach (var i in there)
            {
                foreach (var j in there)
                {
                    sum[i, j] += z[t][i] * z[t][j];
                    count[i, j]++;
                }
            }
        }

        return (sum.PointwiseDivide(count.PointwiseMaximum(1)), count);
    }

    /// <summary>What the uncertainties alone give: rows that share a reading go together, and with that reading.</summary>
    private static Matrix<double> Physics(Line line, Matrix<double> learned, double[] own, List<double> scale, Matrix<double> scaled)
    {
        var k = line.Rows.Count;
        var physics = Matrix<double>.Build.Dense(line.Width, line.Width);
        for (var r = 0; r < k; r++)
        {
            for (var other = 0; other < k; other++)
            {
                physics[r, other] = line.Parameters.Select((p, i) => scaled[r, i] * scaled[other, i] * p.U * p.U).Sum() + (r == other ? 1e-6 : 0);
            }

            for (var i = 0; i < line.Readings; i++)
            {
                physics[r, k + i] = physics[k + i, r] = scaled[r, i] * line.Parameters[i].U * line.Parameters[i].U / scale[k + i];
            }
        }

        var movement = Movement(line, learned, own);
        for (var i = 0; i < line.Readings; i++)
        {
            for (var j = 0; j < line.Readings; j++)
            {
                physics[k + i, k + j] = movement[i, j] + (i == j ? own[i] : 0);
            }
        }

        return physics;
    }

    /// <summary>What is left of the readings' covariance when their own uncertainty is taken away: the plant's own movement.</summary>
    private static Matrix<double> Movement(Line line, Matrix<double> covariance, double[] own)
    {
        var part = covariance.SubMatrix(line.Rows.Count, line.Readings, line.Rows.Count, line.Readings);
        return Positive.Of(part - Matrix<double>.Build.DiagonalOfDiagonalArray(own), LeastMovement);
    }

    /// <summary>Entries that lie as near as chance lets them, the usual distance taken from their middle.</summary>
    private static bool[] Near(List<double[]> z, Matrix<double> covariance)
    {
        var factors = new Factors(covariance);
        var distances = z.ConvertAll(s => factors.Distance(s));
        var ratios = distances.Where(d => d.Degrees > 0).Select(d => d.Square / ChiSquared.InvCDF(d.Degrees, 0.5)).ToList();
        var scale = ratios.Count == 0 ? 1 : Robust.Median(ratios);
        return [.. distances.Select(d => d.Degrees == 0 || d.Square <= scale * ChiSquared.InvCDF(d.Degrees, Far))];
    }
}
