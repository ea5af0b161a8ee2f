using Logbook.Checks.Charts;
using MathNet.Numerics.Statistics;

namespace Logbook.Checks.CrossExamination;

/// <summary>Middle and spread that a few wild values do not move.</summary>
internal static class Robust
{
    public static double Median(IEnumerable<double> values) => values.Median();

    /// <summary>From the MAD; from the standard deviation when more than half of the values are the same.</summary>
    public static double Sigma(IEnumerable<double> values)
    {
        double[] all = [.. values];
        var mad = Spread.MadToSigma * Spread.Mad(all);
        return mad > 0 ? mad : all.Length < 2 ? 0 : all.StandardDeviation();
    }
}
