using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>How the level of one series differs before and after a time.</summary>
/// <param name="Before">Median before that time.</param>
/// <param name="After">Median from then on.</param>
/// <param name="Spreads">The change in units of the usual spread within both parts; negative when it fell.</param>
public sealed record BesideMove(string Point, string Unit, int N, double Before, double After, double Spreads);

/// <summary>
/// What else moved when one series changed its level: medians of the two parts against the spread within them. It says that
/// they moved together, never that one moved the other.
/// </summary>
public static class Beside
{
    private const int FewestInAPart = 3;

    // Smaller moves are everywhere, since neighbouring readings resemble each other. Judgement, no source.
    private const double Moved = 3;

    /// <summary>When the series changed: the change point, else where the cumulated sum began to run, else the middle of its span.</summary>
    public static (DateTimeOffset At, bool Found) Since(TrendResult trend)
    {
        if (trend.Change is { } change)
        {
            return (change.At, true);
        }

        return trend.Cusum is { StartIndex: { } start, SignalIndex: not null }
            ? (trend.Points[start - 1].At, true)
            : (trend.Points[0].At + ((trend.Points[^1].At - trend.Points[0].At) / 2), false);
    }

    /// <summary>The move of one series; null when it did not move more than usual or has too few readings.</summary>
    /// <param name="resolution">The step of what its instrument shows: a spread below it says nothing.</param>
    public static BesideMove? Of(string point, string unit, IReadOnlyList<TrendPoint> series, DateTimeOffset since, double resolution)
    {
        double[] before = [.. series.Where(p => p.At < since).Select(p => p.Value)], after = [.. series.Where(p => p.At >= since).Select(p => p.Value)];
        if (before.Length < FewestInAPart || after.Length < FewestInAPart)
        {
            return null;
        }

        var (low, high) = (before.Median(), after.Median());
        var within = before.Select(v => Math.Abs(v - low)).Concat(after.Select(v => Math.Abs(v - high))).Median() * ToSigma;
        var spread = Math.Max(within, Math.Max(resolution, Math.Abs(low) * 1e-9));
        var moved = (high - low) / Math.Max(spread, double.Epsilon);
        return Math.Abs(moved) >= Moved ? new BesideMove(point, unit, series.Count, low, high, moved) : null;
    }

    // Median of absolute deviations to the standard deviation of a normal distribution.
    private const double ToSigma = 1.4826;
}
