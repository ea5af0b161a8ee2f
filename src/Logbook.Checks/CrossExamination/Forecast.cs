namespace Logbook.Checks.CrossExamination;

/// <summary>
/// What a series' own past lets expect: its mean and a slow deviation from it that fades by <paramref name="Phi"/> an hour and
/// takes up the share <paramref name="Gain"/> of each surprise.
/// </summary>
internal sealed record Forecast(double Mean, double Phi, double Gain)
{
    /// <summary>Nothing but zero is expected.</summary>
    public static Forecast None { get; } = new(0, 0, 0);

    private static readonly double[] Fades = [0, 0.5, 0.7, 0.8, 0.88, 0.94, 0.97, 0.985, 0.995];

    private static readonly double[] Gains = [0, 0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.8, 1];

    /// <summary>Chosen on a grid by the sum of squared surprises, each bounded at three spreads; without a past nothing but zero is expected.</summary>
    public static Forecast Learn(IReadOnlyList<(double Hours, double Value)> series)
    {
        if (series.Count == 0)
        {
            return None;
        }

        var mean = Robust.Median(series.Select(s => s.Value));
        var spread = Robust.Sigma(series.Select(s => s.Value));
        if (spread == 0)
        {
            return new Forecast(mean, 0, 0);
        }

        var centred = series.Where(s => Math.Abs(s.Value - mean) < 4 * spread).Average(s => s.Value);
        var best = (Loss: double.PositiveInfinity, Phi: 0.0, Gain: 0.0);
        foreach (var phi in Fades)
        {
            foreach (var gain in phi == 0 ? [0.0] : Gains)
            {
                var loss = Loss(series, new Forecast(centred, phi, gain), 9 * spread * spread);
                best = loss < best.Loss ? (loss, phi, gain) : best;
            }
        }

        return new Forecast(centred, best.Phi, best.Gain);
    }

    /// <summary>The deviation that is expected so many hours after the last one.</summary>
    public double Faded(double deviation, double hours) => deviation == 0 ? 0 : deviation * Math.Pow(Phi, hours);

    private static double Loss(IReadOnlyList<(double Hours, double Value)> series, Forecast forecast, double bound)
    {
        var (sum, deviation, last) = (0.0, 0.0, series[0].Hours);
        foreach (var (hours, value) in series)
        {
            var expected = forecast.Faded(deviation, hours - last);
            var surprise = value - forecast.Mean - expected;
            sum += Math.Min(surprise * surprise, bound);
            (deviation, last) = (expected + (forecast.Gain * surprise), hours);
        }

        return sum;
    }
}
