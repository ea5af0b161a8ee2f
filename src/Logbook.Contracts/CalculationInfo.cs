namespace Logbook.Contracts;

/// <summary>What a calculation is, in the words of the trade.</summary>
public sealed record CalculationInfo
{
    /// <summary>Lower-case letters, digits and '-'; unique over all plug-ins: <c>lime-feed</c>.</summary>
    public required string Id { get; init; }

    /// <summary>A few words: <c>Lime fed per cubic metre of green liquor</c>.</summary>
    public required string Title { get; init; }

    /// <summary>The area code of the system it belongs to: <c>slaker</c>, <c>laboratory</c> and so on.</summary>
    public required string System { get; init; }

    /// <summary>One paragraph: what it is for and how to read the result.</summary>
    public required string Purpose { get; init; }

    /// <summary>The formula as one would write it on paper, one equation a line, roles by name.</summary>
    public required string Formula { get; init; }

    /// <summary>Where the formula comes from: a published source, or 'common practice, no source'.</summary>
    public required string Source { get; init; }

    /// <summary>What the formula leaves out, in one or two sentences.</summary>
    public required string LeavesOut { get; init; }

    /// <summary>The roles that it takes, in the order in which a person would read them.</summary>
    public required IReadOnlyList<InputInfo> Inputs { get; init; }

    /// <summary>What it gives, in the order in which a person would read it.</summary>
    public required IReadOnlyList<OutputInfo> Outputs { get; init; }
}

/// <summary>One input of a calculation.</summary>
/// <param name="Role">Lower-case letters, digits and '-': <c>gl-temperature</c>.</param>
/// <param name="Unit">A unit of the program's table, with its basis: <c>g/L Na2O</c>.</param>
/// <param name="Meaning">What it is, in a few words.</param>
/// <param name="Lowest">The lowest value the calculation accepts, in <paramref name="Unit"/>, inclusive.</param>
/// <param name="Highest">The highest value the calculation accepts, in <paramref name="Unit"/>, inclusive.</param>
public sealed record InputInfo(string Role, string Unit, string Meaning, double Lowest, double Highest)
{
    /// <summary>The value taken when nothing is given, in <see cref="Unit"/>; null when there is none.</summary>
    public double? Default { get; init; }

    /// <summary>False for a role that may be absent (and has no default). A role with a default is never absent.</summary>
    public bool Required { get; init; } = true;

    /// <summary>
    /// The role from whose reading this one counts on, in the same unit, as end points on one burette do: it cannot be lower. Null
    /// when there is none. The host says so as soon as both are typed, before the rest of the sample is there.
    /// </summary>
    public string? CountsOnFrom { get; init; }
}

/// <summary>One output of a calculation.</summary>
/// <param name="Id">Lower-case letters, digits and '-': <c>cao-from-rise</c>.</param>
/// <param name="Unit">A unit of the program's table, with its basis.</param>
/// <param name="Meaning">What it is, in a few words.</param>
public sealed record OutputInfo(string Id, string Unit, string Meaning)
{
    /// <summary>The physical quantity that this output estimates (<c>cao-dose</c>); all outputs that estimate one quantity must agree. Null when none.</summary>
    public string? Estimates { get; init; }

    /// <summary>The temperature of the litre of a concentration: <c>25 degC</c>, or the role that holds it (<c>line-temperature</c>). Null for anything else.</summary>
    public string? LitreAt { get; init; }

    /// <summary>Standard uncertainty of the method itself, beside that of its inputs: <c>1.0</c> in <see cref="Unit"/>, or <c>3%</c> of the value. Null when none.</summary>
    public string? MethodU { get; init; }

    /// <summary>What it means when the method is off, though every reading is right: <c>lime was fed and did not react</c>.</summary>
    public string? WhenOff { get; init; }

    /// <summary>How long after a move of its inputs the method holds again: what a vessel holds follows by its own time. Zero when it holds at once.</summary>
    public TimeSpan Settles { get; init; }

    /// <summary>Roles whose readings really move when the method is off.</summary>
    public IReadOnlyList<string> Moves { get; init; } = [];

    /// <summary>
    /// Roles that hang on the site (evaporation, an offset, a screw factor). Until the site gives its own fitted constant
    /// for each of them, the output is shown but is no witness against a reading.
    /// </summary>
    public IReadOnlyList<string> NeedsFitted { get; init; } = [];
}
