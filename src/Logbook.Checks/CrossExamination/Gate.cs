namespace Logbook.Checks.CrossExamination;

/// <summary>
/// The largest evidence of any hypothesis that this entry compared, for each onset, against its threshold; each beside how far
/// its own goes in sound history. Rows convict: where they say nothing themselves, or a real change of the plant explains the
/// entries as well, the gate stays shut, however much the readings moved.
/// </summary>
internal sealed record Gate(IReadOnlyList<double> Statistics, IReadOnlyList<double> Thresholds)
{
    /// <summary>The onset (from 1) that exceeds its threshold by most; the nearest to it when none does.</summary>
    public int Onset => 1 + (Statistics.Count == 0 ? 0 : Enumerable.Range(0, Statistics.Count).MaxBy(k => Statistics[k] / Thresholds[k]));

    public double Statistic => Statistics.Count == 0 ? 0 : Statistics[Onset - 1];

    public double Threshold => Thresholds[Onset - 1];

    public bool Open => Statistic > Threshold;

    public static Gate Of(IReadOnlyList<Trace> traces, IReadOnlyList<double> thresholds) =>
        new([.. thresholds.Select((_, k) => traces.Where(t => t.Onset == k + 1 && t.IsNews && t.RowsSpeak).Select(t => t.Evidence / t.Hypothesis.Chance[k]).DefaultIfEmpty(0).Max())], thresholds);
}
