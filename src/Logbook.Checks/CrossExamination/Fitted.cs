using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.CrossExamination;

/// <summary>What was learned from a line's own history: expectations, spreads, covariances and the gate's thresholds.</summary>
internal sealed record Fitted
{
    public required Line Line { get; init; }

    /// <summary>For each row, then for each reading.</summary>
    public required IReadOnlyList<Forecast> Forecasts { get; init; }

    /// <summary>The unit of each place: the uncertainty of a row, the usual surprise of a reading.</summary>
    public required IReadOnlyList<double> Scale { get; init; }

    /// <summary>Covariance of the scaled surprises while the plant runs as usual.</summary>
    public required Matrix<double> Quiet { get; init; }

    /// <summary>The same while the plant is being moved: its readings change together far more than usual.</summary>
    public required Matrix<double> Changed { get; init; }

    public IReadOnlyList<Hypothesis> Hypotheses { get; init; } = [];

    /// <summary>What the physics statistic must exceed for an error that began at this entry, one or two entries ago.</summary>
    public required IReadOnlyList<double> Thresholds { get; init; }

    /// <summary>How the readings usually change from one time to the next.</summary>
    public required UsualChanges UsualChanges { get; init; }

    /// <summary>How many entries were learned from.</summary>
    public required int Entries { get; init; }

    /// <summary>The share of them that the fit itself left out.</summary>
    public required double LeftOut { get; init; }

    /// <summary>The rows' lasting offsets in their own uncertainty: constants that disagree, said rather than hidden.</summary>
    public IReadOnlyList<double> StandingDisagreements => [.. Enumerable.Range(0, Line.Rows.Count).Select(k => Forecasts[k].Mean / Scale[k])];

    /// <summary>
    /// What the gate's statistics would rarely exceed if all errors were normal, about 1 in 1000 for each of a dozen suspicions.
    /// </summary>
    private const double IfNormal = 10.5;

    /// <summary>What was learned is never exact: evidence never counts for more. Chosen on simulated lines, no source.</summary>
    private const double MostCounted = 0.85;

    /// <summary>How much evidence counts for when suspicions are set beside each other: errors that reach farther by chance than normal ones tell less.</summary>
    public double Counts => UsesHistory ? Math.Min(MostCounted, IfNormal / Thresholds[0]) : 1;

    /// <summary>False when there was too little history: then only the rows speak.</summary>
    public bool UsesHistory => Entries >= Fit.FewestEntries;
}
