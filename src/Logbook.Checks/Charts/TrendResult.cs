namespace Logbook.Checks.Charts;

/// <summary>One reading of a series.</summary>
/// <param name="At">When it was taken.</param>
/// <param name="Value">In the point's unit; never NaN.</param>
/// <param name="Seq">The record that holds it.</param>
public sealed record TrendPoint(DateTimeOffset At, double Value, long Seq);

/// <summary>The limits a series is heading for, in the point's unit; null where there is none.</summary>
public sealed record TrendLimits(double? UrgentLow = null, double? WatchLow = null, double? WatchHigh = null, double? UrgentHigh = null);

/// <summary>What the person who asks may fix.</summary>
public sealed record TrendOptions
{
    /// <summary>The centre of the charts; the baseline's mean unless given.</summary>
    public double? Target { get; init; }

    /// <summary>Sigma of the charts; from the baseline unless given.</summary>
    public double? Sigma { get; init; }

    /// <summary>Readings up to and including this time make the baseline; all of them unless given.</summary>
    public DateTimeOffset? BaselineTo { get; init; }

    /// <summary>The step of what the instrument shows, in the point's unit; zero when unknown.</summary>
    public double Resolution { get; init; }

    /// <summary>Times at which the series starts anew (a shutdown, another instrument, a new limit).</summary>
    public IReadOnlyList<DateTimeOffset> Breaks { get; init; } = [];
}

/// <summary>Everything that a chart of one point says. Indices are from 1.</summary>
public sealed record TrendResult
{
    public required string Point { get; init; }

    public required string Unit { get; init; }

    public required int N { get; init; }

    public double? Mean { get; init; }

    public double? Sd { get; init; }

    public double? Lag1 { get; init; }

    public double? SigmaMr { get; init; }

    public double? Lcl { get; init; }

    public double? Ucl { get; init; }

    /// <summary><c>mr</c>, <c>sd</c> or <c>given</c>; null when there are no limits.</summary>
    public string? LimitsFrom { get; init; }

    /// <summary>True when the baseline has fewer than twenty readings.</summary>
    public bool Provisional { get; init; }

    public IReadOnlyList<TrendSignal> Signals { get; init; } = [];

    public TrendCusum? Cusum { get; init; }

    public TrendEwma? Ewma { get; init; }

    public TrendSlope? Slope { get; init; }

    public TrendHours? HoursToLimit { get; init; }

    public TrendChange? Change { get; init; }

    public IReadOnlyList<TrendPoint> Points { get; init; } = [];

    /// <summary>Where it is going, in a few words: the slope and the hours to a limit. Empty of fewer than two readings.</summary>
    public string Heading { get; init; } = "";

    /// <summary>What it comes to, in plain sentences.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];
}

/// <summary>A pattern, once for each episode: the reading at which it was first complete.</summary>
public sealed record TrendSignal(string Rule, int Index, DateTimeOffset At);

/// <summary>K and H in sigma.</summary>
public sealed record TrendCusum(double K, double H, int? SignalIndex, int? StartIndex);

/// <summary>The moving average and its steady limits.</summary>
public sealed record TrendEwma(double Lambda, double Last, double Lcl, double Ucl);

/// <summary>The median slope with its 95 % interval; an end is null when there are too few readings for it.</summary>
public sealed record TrendSlope(double PerHour, double? Low, double? High, double P);

/// <summary>The limit ahead and when the line meets it; all null but the limit when no trend is shown.</summary>
public sealed record TrendHours(string Limit, double? Value, double? Low, double? High);

/// <summary>Where the series changed, when chance does not explain it.</summary>
public sealed record TrendChange(int AfterIndex, DateTimeOffset At, double P);
