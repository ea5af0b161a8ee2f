namespace Logbook.Plant;

public enum PointKind { Read, Derived }

/// <summary>One thing that is read or derived. Numbers are in <see cref="Unit"/>; null means that none is set.</summary>
public sealed record Point
{
    public required string Tag { get; init; }

    public required string Description { get; init; }

    /// <summary>One of <see cref="Area.All"/>.</summary>
    public required string Area { get; init; }

    public required Unit Unit { get; init; }

    /// <summary>The unit as it is said: a strength with its basis and the temperature of its litre, where the description ends with it (<c>as Na2O at 25 degC</c>).</summary>
    public string UnitInWords => Description.LastIndexOf(" at ", StringComparison.Ordinal) is > 0 and var at ? Unit.InWords(Description[(at + 4)..]) : Unit.InWords(null);

    public required PointKind Kind { get; init; }

    /// <summary>Decimals shown.</summary>
    public int Decimals { get; init; }

    /// <summary>The smallest step that the instrument shows.</summary>
    public double? Resolution { get; init; }

    /// <summary>Standard uncertainty of a reading: in the unit, or a share of the value.</summary>
    public Uncertainty? U { get; init; }

    /// <summary>Below this no reading is physically possible.</summary>
    public double? Lowest { get; init; }

    /// <summary>Above this no reading is physically possible.</summary>
    public double? Highest { get; init; }

    public Limits Limits { get; init; } = Limits.None;

    /// <summary>Largest believable change per hour.</summary>
    public double? Step { get; init; }

    /// <summary>How old a value may be when a calculation uses it.</summary>
    public TimeSpan Stale { get; init; } = TimeSpan.FromHours(4);

    /// <summary>Code of the equipment that it belongs to: its limits rest while that is stopped.</summary>
    public string? Equipment { get; init; }

    /// <summary>Points with one name are one sample: taken from one entry or not at all.</summary>
    public string? Sample { get; init; }

    /// <summary>The quantity that this reading is a witness of.</summary>
    public string? Estimates { get; init; }

    /// <summary>What a look-and-listen point may be, typed as 1, 2, 3; empty for a number.</summary>
    public IReadOnlyList<Choice> Choices { get; init; } = [];

    /// <summary>Judged even while its equipment is stopped: gas, temperature and level of vessels, safety equipment.</summary>
    public bool Always { get; init; }
}

/// <summary>Limits in the point's unit; a value beyond <see cref="UrgentHigh"/> is urgent, beyond <see cref="WatchHigh"/> to watch.</summary>
public sealed record Limits(double? UrgentLow, double? WatchLow, double? WatchHigh, double? UrgentHigh)
{
    public static readonly Limits None = new(null, null, null, null);
}

/// <summary>Standard uncertainty: <c>0.3</c> in the unit, or <c>2%</c> of the value.</summary>
public sealed record Uncertainty(double Amount, bool IsShare)
{
    /// <summary>Standard uncertainty of <paramref name="value"/>, in its unit, never negative.</summary>
    public double Of(double value) => IsShare ? Math.Abs(value) * Amount : Amount;
}

/// <summary>One answer of a look-and-listen point.</summary>
/// <param name="Digit">What is typed, from 1.</param>
/// <param name="Text">What it says: <c>leak</c>.</param>
/// <param name="Level">Null when it is good; else <c>note</c>, <c>watch</c> or <c>urgent</c>.</param>
public sealed record Choice(int Digit, string Text, string? Level);
