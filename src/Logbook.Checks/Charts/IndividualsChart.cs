using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>Where sigma of a chart comes from.</summary>
internal enum SigmaFrom
{
    /// <summary>The mean moving range over 1.128: for readings that do not remember the one before.</summary>
    MovingRange,

    /// <summary>The standard deviation: where neighbours resemble each other and the moving range is far too small.</summary>
    StandardDeviation,

    /// <summary>Given by the person who asks.</summary>
    Given,
}

/// <summary>
/// Centre and three-sigma limits of single readings. Sigma is the mean moving range over 1.128, unless the readings remember
/// the one before: then the moving range is too small and the standard deviation is taken.
/// </summary>
internal sealed record IndividualsChart(double Centre, double Sigma, SigmaFrom From, double SigmaMr, double MrUpper, double Lag1)
{
    /// <summary>Below this many readings the limits are provisional.</summary>
    public const int FewForLimits = 20;

    public double Lower => Centre - (3 * Sigma);

    public double Upper => Centre + (3 * Sigma);

    /// <summary>True when neighbours resemble each other: no run rules then, and residuals are judged instead.</summary>
    public bool Remembers => From == SigmaFrom.StandardDeviation;

    /// <param name="baseline">At least two readings in time order.</param>
    /// <param name="breakBefore">For each reading, whether the line before it is broken.</param>
    public static IndividualsChart Of(IReadOnlyList<double> baseline, IReadOnlyList<bool>? breakBefore = null)
    {
        var sd = baseline.StandardDeviation();
        var ranges = Spread.MovingRanges(baseline, breakBefore);
        var meanRange = ranges.Count == 0 ? sd * Spread.D2 : ranges.Average();
        var sigmaMr = meanRange / Spread.D2;
        var lag1 = Spread.Lag1(baseline);
        var remembers = lag1 > 2 / Math.Sqrt(baseline.Count) || (sd > 0 && sigmaMr / sd < 0.8);
        var (sigma, from) = remembers ? (sd, SigmaFrom.StandardDeviation) : (sigmaMr, SigmaFrom.MovingRange);
        return new IndividualsChart(baseline.Average(), sigma, from, sigmaMr, Spread.D4 * meanRange, lag1);
    }

    /// <summary>What is left of each reading when the part that it takes from the one before is taken away.</summary>
    public IReadOnlyList<double> Residuals(IReadOnlyList<double> values) =>
        [.. Enumerable.Range(1, Math.Max(0, values.Count - 1)).Select(i => values[i] - Centre - (Lag1 * (values[i - 1] - Centre)))];
}
