using Logbook.Checks.CrossExamination;
using Logbook.Plant;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>Anything of the site that may be wrong: a reading, a constant that was typed once, or a method.</summary>
/// <param name="Name">The point's tag; <c>BINDING.ROLE</c> of a constant; <c>BINDING: OUTPUT</c> of a method.</param>
/// <param name="Role">What it is.</param>
/// <param name="U">Its standard uncertainty; a method's share is of its estimate.</param>
internal sealed record Subject(string Name, Role Role, Uncertainty U)
{
    /// <summary>The point that is read.</summary>
    public Point? Point { get; init; }

    /// <summary>A constant's value in its role's unit; zero for a method, whose value is its error.</summary>
    public double Typed { get; init; }

    /// <summary>The unit of its error: the point's, the role's, or that in which the estimate is kept.</summary>
    public required Unit Unit { get; init; }

    /// <summary>As a person says it.</summary>
    public required string Words { get; init; }

    /// <summary>What it means when a method is off though every reading is right.</summary>
    public string? WhenOff { get; init; }

    /// <summary>Tags of the readings that really move when a method is off.</summary>
    public IReadOnlyList<string> Moves { get; init; } = [];

    /// <summary>As the engine takes it.</summary>
    /// <param name="usual">The usual value of a reading.</param>
    /// <param name="places">Tag to place among the parameters.</param>
    public Parameter As(double usual, IReadOnlyDictionary<string, int> places) =>
        new(Name, Role, Role == Role.Method ? U.Amount : U.Of(Role == Role.Reading ? usual : Typed))
        {
            Moves = [.. Moves.Select(tag => places[tag])],
            WhenOff = WhenOff,
            Sample = Point?.Sample,
        };
}

/// <summary>A number that an estimate starts from.</summary>
/// <param name="Key">Of its subject.</param>
/// <param name="Lag">How long before.</param>
internal sealed record Source(string Key, TimeSpan Lag)
{
    /// <summary>False when the estimate may do without it.</summary>
    public bool Required { get; init; } = true;
}
