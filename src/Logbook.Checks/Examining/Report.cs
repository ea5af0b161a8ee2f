using Logbook.Journal;

namespace Logbook.Checks.Examining;

/// <summary>One entry cross-examined, as a person or a program may read it.</summary>
public sealed record ExaminationReport
{
    public required long Seq { get; init; }

    public required DateTimeOffset At { get; init; }

    /// <summary>The record whose fit was used.</summary>
    public required long Fit { get; init; }

    /// <summary>Do the comparisons of this entry agree as a whole, each estimate with its uncertainty; null when nothing was compared. It informs; the gate decides.</summary>
    public required GlobalTest? Global { get; init; }

    /// <summary>How far each reading, constant and method alone would explain the entry's comparisons.</summary>
    public required IReadOnlyList<TestedReading> Readings { get; init; }

    public required GateTest Gate { get; init; }

    /// <summary>Tags or names: the one that is named, the method beside it, or the smallest group.</summary>
    public required string? Named { get; init; }

    public required string? WithMethod { get; init; }

    public required IReadOnlyList<string> Group { get; init; }

    /// <summary>What the entry is told: an examination finding, or that nothing contradicts itself.</summary>
    public required string Text { get; init; }

    /// <summary>That comparisons wait for a move of the line to come through, and until when; null when none does.</summary>
    public required string? Waiting { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }

    public required IReadOnlyList<ComparedRow> Compared { get; init; }

    /// <summary>Readings of the entry that stand in no relation: nothing can check them.</summary>
    public required IReadOnlyList<string> Unchecked { get; init; }
}

/// <summary>The global test.</summary>
/// <param name="P">The chance of more when all is well.</param>
public sealed record GlobalTest(double Statistic, int Degrees, double Critical, double P);

/// <summary>One that may be wrong.</summary>
/// <param name="Kind">reading, constant or method.</param>
/// <param name="Z">The measurement test's; null when no comparison of this entry can check it.</param>
/// <param name="Glr">How much better the comparisons would be explained.</param>
/// <param name="Share">Of all hypotheses; null while the gate is shut.</param>
/// <param name="Adjusted">The value less its bias.</param>
/// <param name="Bias">How far it would be off.</param>
public sealed record TestedReading(string Kind, string Point, double? Z, double? Glr, double? Share, double? Adjusted, double? Bias);

/// <summary>Whether anything is wrong at all.</summary>
/// <param name="Onset">1 when it would have begun with this entry.</param>
public sealed record GateTest(double Statistic, double Threshold, int Onset, bool Open);

/// <summary>Two ways to know one thing, as the entry had them.</summary>
/// <param name="Quantity">What is known.</param>
/// <param name="One">The way that is read most often, by its point's tag.</param>
/// <param name="Usual">The difference that was expected.</param>
/// <param name="Surprise">How far off, in the comparison's own uncertainty; null while the line settles after a move, or the row was not heard.</param>
public sealed record ComparedRow(string Quantity, string One, string Other, double First, double Second, string Unit, double Difference, double? Usual, double? Surprise)
{
    /// <summary>When a move of the line has come through, and the row speaks again; null when it does not wait for one.</summary>
    public DateTimeOffset? Until { get; init; }
}
