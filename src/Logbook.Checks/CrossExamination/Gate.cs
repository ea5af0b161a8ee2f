namespace Logbook.Checks.CrossExamination;

/// <summary>
/// The largest physics statistic of any hypothesis that this entry compared, for each onset, against its threshold; each beside
/// how far its own goes in sound history. Only the rows count here: a real
/// change of the plant keeps them, however much it moves the readings.
/// </summary>
internal sealed record Gate(IReadOnlyList<double> Statistics, IReadOnlyList<double> Thresholds)
{
    /// <summary>The onset (from 1) that exceeds its threshold by most; the nearest to it when none does.</summary>
    public int Onset => 1 + (Statistics.Count == 0 ? 0 : Enumerable.Range(0, Statistics.Count).MaxBy(k => Statistics[k] / Thresholds[k]));

    public double Statistic => Statistics.Count == 0 ? 0 : Statistics[Onset - 1];

    public double Threshold => Thresholds[Onset - 1];

    public bool Open => Statistic > Threshold;

    public static Gate Of(IReadOnlyList<Trace> traces, IReadOnlyList<double> thresholds) =>
        new([.. thresholds.Select((_, k) => traces.Where(t => t.Onset == k + 1 && t.IsNews).Select(t => t.Evidence / t.Hypothesis.Chance[k]).DefaultIfEmpty(0).Max())], thresholds);
}
