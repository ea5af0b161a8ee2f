using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>
/// Whether a point has slowly left the place where it usually lies: its exponentially weighted moving average (lambda 0.2, as in
/// <see cref="Ewma"/>) against how far the same average went in the sound days before. So the limits come from the point's own
/// history, and neighbours that resemble each other widen them by just as much as they do. The newest days are no history: a
/// drift must not teach what is usual.
/// </summary>
/// <param name="Usual">The median of the days before.</param>
/// <param name="Now">The average at the newest reading.</param>
/// <param name="Reach">95 of 100 averages of the days before lay within this of the usual.</param>
/// <param name="Since">Index of the first reading since which the average has been beyond that without a break.</param>
/// <param name="Readings">How many made the history.</param>
internal sealed record Creep(double Usual, double Now, double Reach, int Since, int Readings)
{
    /// <summary>So many hours of the newest are judged, and teach nothing.</summary>
    public const double NewestHours = 72;

    // Set on the simulated lines of the tests: see the README for what it is worth.
    private const double Far = 2.5;
    private const double StillFar = Far / 2;
    private const int FewestReadings = 40;
    private const double FewestHours = 5 * 24;
    private const double FewestIndependent = 6;

    // A single reading moves the average by no more than this many sigma of it: a slip is not a drift.
    private const double Most = 3;
    private const int Settling = 10;

    public double Away => Now - Usual;

    /// <summary>How many times as far as usual.</summary>
    public double Times => Math.Abs(Away) / Reach;

    /// <param name="least">What is closer to the usual than this cannot be told from the instrument's own error.</param>
    /// <param name="going">True when it was found before: it is over when it has come half of the way back.</param>
    public bool Stands(double least, bool going) => Math.Abs(Away) > least && Times > (going ? StillFar : Far);

    /// <summary>Null when there is too little history to say.</summary>
    /// <param name="hours">Times in hours, rising; a long pause makes the series begin anew for those who ask.</param>
    /// <param name="values">Readings in that order.</param>
    /// <param name="resolution">The step of the display.</param>
    public static Creep? Of(IReadOnlyList<double> hours, IReadOnlyList<double> values, double resolution)
    {
        var before = hours.Count - hours.Reverse().TakeWhile(h => h > hours[^1] - NewestHours).Count();
        double[] history = [.. values.Take(before)];
        if (before < FewestReadings || before == values.Count || hours[before - 1] - hours[0] < FewestHours || Independent(history) < FewestIndependent)
        {
            return null;
        }

        var usual = history.Median();
        var averages = Averages(values, usual, Most * Spread.RobustSigma(history, resolution));
        var reach = Math.Max(averages.Take(before).Skip(Settling).Select(a => Math.Abs(a - usual)).Quantile(0.95), resolution / 2);
        var since = averages.Length - 1;
        while (since > 0 && (averages[since - 1] - usual) * Math.Sign(averages[^1] - usual) > reach)
        {
            since--;
        }

        return new Creep(usual, averages[^1], reach, since, before);
    }

    /// <summary>Readings that resemble the one before count for less: of a series that remembers a share phi, (1 - phi) / (1 + phi).</summary>
    private static double Independent(double[] history) => Math.Clamp(Spread.Lag1(history), 0, 0.97) is var phi ? history.Length * (1 - phi) / (1 + phi) : 0;

    private static double[] Averages(IReadOnlyList<double> values, double begin, double most)
    {
        var average = begin;
        return [.. values.Select(v => average += Ewma.UsualLambda * Math.Clamp(v - average, -most, most))];
    }
}
