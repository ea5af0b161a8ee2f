namespace Logbook.Checks.Charts;

/// <summary>
/// Cumulative sums above and below a target, each with an allowance: finds a small lasting shift, with the reading at which it
/// began. Indices are from 1.
/// </summary>
internal sealed record Cusum(double Threshold, IReadOnlyList<double> High, IReadOnlyList<double> Low)
{
    /// <summary>Half of the shift that is to be found, in sigma.</summary>
    public const double UsualK = 0.5;

    /// <summary>In sigma; with k 0.5 one false alarm in about 465 independent readings.</summary>
    public const double UsualH = 5;

    /// <summary>The first reading beyond the threshold on either side; null when none.</summary>
    public int? SignalIndex =>
        Enumerable.Range(1, High.Count).Where(i => High[i - 1] > Threshold || Low[i - 1] > Threshold).Cast<int?>().FirstOrDefault();

    /// <summary>True when the signal is upwards, false when downwards, null without one.</summary>
    public bool? Upwards => SignalIndex is { } i ? High[i - 1] > Threshold : null;

    /// <summary>The reading after the last zero before the signal: where the shift probably began.</summary>
    public int? StartIndex
    {
        get
        {
            if (SignalIndex is not { } signal)
            {
                return null;
            }

            var side = Upwards == true ? High : Low;
            return Enumerable.Range(1, signal).Reverse().Where(i => side[i - 1] <= 0).Select(i => i + 1).FirstOrDefault(1);
        }
    }

    /// <param name="values">Readings in time order.</param>
    /// <param name="target">The centre.</param>
    /// <param name="allowance">K, in the readings' unit.</param>
    /// <param name="threshold">H, in the readings' unit.</param>
    /// <param name="start">Where both sums start; half the threshold finds an early shift sooner.</param>
    public static Cusum Of(IReadOnlyList<double> values, double target, double allowance, double threshold, double start = 0)
    {
        var (high, low) = (start, start);
        var (highs, lows) = (new List<double>(values.Count), new List<double>(values.Count));
        foreach (var value in values)
        {
            highs.Add(high = Math.Max(0, high + value - target - allowance));
            lows.Add(low = Math.Max(0, low + target - allowance - value));
        }

        return new Cusum(threshold, highs, lows);
    }
}
