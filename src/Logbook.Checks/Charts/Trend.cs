using Logbook.Journal;
using Logbook.Plant;
using MathNet.Numerics.Statistics;

namespace Logbook.Checks.Charts;

/// <summary>Everything that the charts say of one point's series.</summary>
public static class Trend
{
    private const int FewestForTrend = 4;
    private const int FewestForChange = 10;
    private const double Rare = 0.01;

    /// <summary>Of a point's history as the journal has it, with the limits in force today: those are what lies ahead.</summary>
    public static TrendResult Of(Point point, IEnumerable<SeriesValue> history, TrendOptions? options = null) => Of(
        point.Tag, point.Unit.Name, Points(history), new(point.Limits.UrgentLow, point.Limits.WatchLow, point.Limits.WatchHigh, point.Limits.UrgentHigh),
        (options ?? new TrendOptions()) with { Resolution = point.Resolution ?? 0 });

    /// <summary>The numbers of a history.</summary>
    public static IEnumerable<TrendPoint> Points(IEnumerable<SeriesValue> history) =>
        history.Where(v => v.Value is not null).Select(v => new TrendPoint(v.At, v.Value!.Value, v.Seq));

    /// <param name="point">The point's tag.</param>
    /// <param name="unit">The point's unit.</param>
    /// <param name="series">Readings in any order; those that are no numbers are left out.</param>
    /// <param name="limits">The limits in force.</param>
    /// <param name="options">What is fixed from outside.</param>
    public static TrendResult Of(string point, string unit, IEnumerable<TrendPoint> series, TrendLimits limits, TrendOptions? options = null)
    {
        var points = series.Where(p => double.IsFinite(p.Value)).OrderBy(p => p.At).ThenBy(p => p.Seq).ToList();
        var asked = options ?? new TrendOptions();
        var result = new TrendResult { Point = point, Unit = unit, N = points.Count, Points = points };
        if (points.Count < 2)
        {
            return result with { Words = [points.Count == 0 ? "no readings" : "one reading: nothing to compare it with"] };
        }

        double[] values = [.. points.Select(p => p.Value)];
        var charted = Chart(result with { Mean = values.Mean(), Sd = values.StandardDeviation() }, points, values, asked);
        var trended = points.Count < FewestForTrend ? charted : Line(charted, points, values, limits);
        return trended with { Words = TrendWords.Of(trended), Heading = TrendWords.Heading(trended) };
    }

    private static TrendResult Chart(TrendResult result, List<TrendPoint> points, double[] values, TrendOptions asked)
    {
        var breaks = Breaks.Of([.. points.Select(p => p.At)], asked.Breaks);
        var n = asked.BaselineTo is { } to ? points.Count(p => p.At <= to) : points.Count;
        var from = n >= 2 ? n : points.Count;
        var chart = IndividualsChart.Of(values[..from], breaks);
        var centre = asked.Target ?? chart.Centre;
        var sigma = asked.Sigma ?? chart.Sigma;
        var shown = result with
        {
            Lag1 = chart.Lag1,
            SigmaMr = chart.SigmaMr,
            Lcl = centre - (3 * sigma),
            Ucl = centre + (3 * sigma),
            LimitsFrom = asked.Sigma is not null ? "given" : chart.Remembers ? "sd" : "mr",
            Provisional = asked.Sigma is null && from < IndividualsChart.FewForLimits,
        };
        if (sigma <= 0)
        {
            return shown;
        }

        var cusum = Cusum.Of(values, centre, Cusum.UsualK * sigma, Cusum.UsualH * sigma);
        var ewma = Ewma.Of(values, centre, sigma);
        return shown with
        {
            Cusum = new TrendCusum(Cusum.UsualK, Cusum.UsualH, cusum.SignalIndex, cusum.StartIndex),
            Ewma = new TrendEwma(ewma.Lambda, ewma.Last, ewma.Lower, ewma.Upper),
            Signals = TrendSignals.Of(chart, centre, sigma, values, points, asked.Resolution),
        };
    }

    private static TrendResult Line(TrendResult result, List<TrendPoint> points, double[] values, TrendLimits limits)
    {
        var thin = Thinned(points);
        double[] hours = [.. thin.Select(p => (p.At - points[0].At).TotalHours)];
        double[] x = [.. thin.Select(p => p.Value)];
        var plain = TheilSen.Of(hours, x, 0);
        var inflation = Inflation([.. x.Select((v, i) => v - plain.At(hours[i]))]);
        var test = MannKendall.Of(x, inflation);
        var line = TheilSen.Of(hours, x, test.Variance);
        var now = (points[^1].At - points[0].At).TotalHours;
        var change = values.Length < FewestForChange || result.Sd == 0 ? null : ChangePoint.Of(x);
        return result with
        {
            Slope = new TrendSlope(line.Slope, Finite(line.Low), Finite(line.High), test.P),
            HoursToLimit = Ahead(line, now, limits),
            Change = change is { } c && c.P < Rare ? new TrendChange(points.IndexOf(thin[c.After - 1]) + 1, thin[c.After - 1].At, c.P) : null,
        };
    }

    /// <summary>The nearest limit in the direction of the slope.</summary>
    private static TrendHours? Ahead(TheilSen line, double now, TrendLimits limits)
    {
        var at = line.At(now);
        (string Name, double? Value)[] named =
        [
            ("urgent_low", limits.UrgentLow), ("watch_low", limits.WatchLow), ("watch_high", limits.WatchHigh), ("urgent_high", limits.UrgentHigh),
        ];
        var ahead = named.Where(l => l.Value is { } v && (v - at) * line.Slope > 0).OrderBy(l => Math.Abs(l.Value!.Value - at)).ToList();
        if (ahead.Count == 0)
        {
            return null;
        }

        var time = TimeToLimit.Of(line, ahead[0].Value!.Value, now);
        return new TrendHours(ahead[0].Name, time.Hours, time.Earliest, time.Latest);
    }

    /// <summary>How many neighbours count as one, from what is left when the line is taken away; one when they do not resemble each other.</summary>
    private static double Inflation(double[] residuals)
    {
        var lag1 = Spread.Lag1(residuals);
        var clamped = Math.Min(lag1, 0.95);
        return lag1 > 2 / Math.Sqrt(residuals.Length) ? (1 + clamped) / (1 - clamped) : 1;
    }

    private static List<TrendPoint> Thinned(List<TrendPoint> points)
    {
        var every = ((points.Count - 1) / TheilSen.Most) + 1;
        return [.. points.Where((_, i) => (points.Count - 1 - i) % every == 0)];
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
