namespace Logbook.Contracts;

/// <summary>What a calculation answers: <see cref="Values"/> or <see cref="Refused"/>.</summary>
public abstract record Outcome;

/// <summary>The inputs cannot be true together, or lie outside what the formula covers.</summary>
/// <param name="Role">The role that is most likely wrong.</param>
/// <param name="Sentence">One plain sentence that names the role and says what is accepted.</param>
public sealed record Refused(string Role, string Sentence) : Outcome;

/// <summary>The results.</summary>
/// <param name="Numbers">Output id to number, in the output's unit. An output that could not be computed is absent.</param>
public sealed record Values(IReadOnlyDictionary<string, double> Numbers) : Outcome
{
    /// <summary>What a practitioner would conclude, as advice with the other explanation beside it. Never a command.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>The sums with the numbers put in, line by line, so that a person can follow them on paper.</summary>
    public IReadOnlyList<string> Steps { get; init; } = [];
}

/// <summary>Made by the host alone: the plug-in threw, gave a non-number, took too long, or is switched off.</summary>
/// <param name="Sentence">One plain sentence: what happened.</param>
public sealed record Failed(string Sentence) : Outcome;
