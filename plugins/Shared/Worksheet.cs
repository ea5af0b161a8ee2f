using System.Collections;
using Logbook.Contracts;

namespace Logbook.Plugins.Shared;

/// <summary>One run as it would stand on a sheet of paper: each sum with its numbers put in, and the results below.</summary>
internal sealed class Worksheet
{
    private readonly Dictionary<string, double> _numbers = new(StringComparer.Ordinal);
    private readonly List<string> _notes = [];
    private readonly Working _steps = new();

    /// <summary>A line of working.</summary>
    public void Step(FormattableString line) => _steps.Add(line);

    /// <summary>A result, with the line of working that gives it.</summary>
    public void Give(string output, double value, FormattableString line)
    {
        Step(line);
        _numbers.Add(output, value);
    }

    /// <summary>What a practitioner would conclude, with the other explanation beside it.</summary>
    public void Note(FormattableString advice) => _notes.Add(FormattableString.Invariant(advice));

    public Values ToValues() => new(_numbers) { Notes = _notes, Steps = _steps };

    /// <summary>Lines that are written out when somebody reads them: most runs only ask what a small change does to the numbers.</summary>
    private sealed class Working : IReadOnlyList<string>
    {
        private readonly List<FormattableString> _lines = [];

        public int Count => _lines.Count;

        public string this[int index] => FormattableString.Invariant(_lines[index]);

        public void Add(FormattableString line) => _lines.Add(line);

        public IEnumerator<string> GetEnumerator() => _lines.Select(FormattableString.Invariant).GetEnumerator();

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }

    /// <summary>A refusal that names the role and says what is accepted.</summary>
    public static Refused Refuse(string role, FormattableString sentence) =>
        new(role, FormattableString.Invariant(sentence));
}
