namespace Logbook.Checks.CrossExamination;

/// <summary>What a parameter of the comparisons is.</summary>
internal enum Role
{
    /// <summary>Read again and again; has a past.</summary>
    Reading,

    /// <summary>Typed once; has an uncertainty and no past.</summary>
    Constant,

    /// <summary>The error of an estimate itself: zero while the method holds.</summary>
    Method,
}

/// <summary>Anything that may be wrong.</summary>
/// <param name="Name">The point's tag, the constant's or the method's name.</param>
/// <param name="Role">What it is.</param>
/// <param name="U">Its standard uncertainty, in its own unit; positive.</param>
internal sealed record Parameter(string Name, Role Role, double U)
{
    /// <summary>For a method: places of the readings that really move when it is off.</summary>
    public IReadOnlyList<int> Moves { get; init; } = [];

    /// <summary>Readings of one sample are one witness of a move: a sample that was spoilt moves them all. Null for a reading that stands alone.</summary>
    public string? Sample { get; init; }

    /// <summary>For a method: what it means when it is off, in words.</summary>
    public string? WhenOff { get; init; }
}

/// <summary>What stands in relation to what: readings first, then constants, then methods; and the rows that compare them.</summary>
internal sealed record Line(IReadOnlyList<Parameter> Parameters, IReadOnlyList<string> Rows)
{
    /// <summary>Readings are the first of the parameters.</summary>
    public int Readings { get; } = Parameters.TakeWhile(p => p.Role == Role.Reading).Count();

    /// <summary>Places in one vector: the rows, then the readings' surprises.</summary>
    public int Width => Rows.Count + Readings;
}

/// <summary>One entry as the examination sees it.</summary>
/// <param name="Hours">When it was taken, in hours since any fixed time.</param>
/// <param name="Values">For each reading the value taken in this entry; NaN when it was not taken, or its equipment is not running.</param>
/// <param name="Rows">For each row its difference; null when it has nothing new to say, or is no witness now.</param>
internal sealed record Round(double Hours, IReadOnlyList<double> Values, IReadOnlyList<RowReading?> Rows)
{
    /// <summary>Readings that moved with this entry and that another one bore out: the plant was moved.</summary>
    public IReadOnlyList<int> Moved { get; init; } = [];

    /// <summary>For each row the hour from which on it speaks again; empty before it was heard.</summary>
    public IReadOnlyList<double> Settled { get; init; } = [];
}

/// <summary>The difference of two estimates of one quantity, and what it hangs on.</summary>
internal sealed record RowReading(double Difference, IReadOnlyList<Sensitivity> Sensitivities)
{
    /// <summary>How many hours after a move of what it takes the row holds again.</summary>
    public double Settles { get; init; }
}

/// <summary>How a row moves with a parameter as it was so many hours before the entry.</summary>
/// <param name="HoursBack">How old the reading was: by its lag, or since it stands until the next is taken.</param>
/// <param name="Lag">How long before the entry the row wants it; zero for what it takes as it stands.</param>
internal sealed record Sensitivity(int Parameter, double Slope, double HoursBack, double Lag = 0);
