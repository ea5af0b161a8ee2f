using Logbook.Contracts;

namespace Logbook.Plugins.Shared;

/// <summary>One run as it would stand on a sheet of paper: each sum with its numbers put in, and the results below.</summary>
internal sealed class Worksheet
{
    private readonly Dictionary<string, double> _numbers = new(StringComparer.Ordinal);
    private readonly List<string> _notes = [];
    private readonly List<string> _steps = [];

    /// <summary>A line of working.</summary>
    public void Step(FormattableString line) => _steps.Add(FormattableString.Invariant(line));

    /// <summary>A result, with the line of working that gives it.</summary>
    public void Give(string output, double value, FormattableString line)
    {
        Step(line);
        _numbers.Add(output, value);
    }

    /// <summary>What a practitioner would conclude, with the other explanation beside it.</summary>
    public void Note(FormattableString advice) => _notes.Add(FormattableString.Invariant(advice));

    public Values ToValues() => new(_numbers) { Notes = _notes, Steps = _steps };

    /// <summary>A refusal that names the role and says what is accepted.</summary>
    public static Refused Refuse(string role, FormattableString sentence) =>
        new(role, FormattableString.Invariant(sentence));
}
