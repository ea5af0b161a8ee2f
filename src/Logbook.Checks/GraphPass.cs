using Logbook.Contracts;

namespace Logbook.Checks;

/// <summary>What became of one calculation in a pass: an outcome, or the input for which it could not run.</summary>
internal sealed record Attempt(LinkedCalculation Calculation)
{
    public Outcome? Outcome { get; init; }

    /// <summary>Role to number, as it ran.</summary>
    public Dictionary<string, double> Given { get; init; } = [];

    /// <summary>A bound input that has no number.</summary>
    public LinkedInput? Missing { get; init; }

    /// <summary>An input outside the role's range, with its value in the role's unit.</summary>
    public (LinkedInput Input, double Value)? Outside { get; init; }

    public Values? Values => Outcome as Values;
}

/// <summary>Runs calculations in their order on one set of numbers, each taking what those before it gave.</summary>
internal sealed class GraphPass(IReadOnlyList<LinkedCalculation> calculations, GuardedCall call)
{
    /// <summary>Runs them all. <paramref name="board"/> receives the derived points.</summary>
    public IReadOnlyList<Attempt> RunAll(Board board)
    {
        var attempts = new List<Attempt>(calculations.Count);
        foreach (var calculation in calculations)
        {
            var attempt = Try(calculation, board);
            attempts.Add(attempt);
            Post(attempt, board);
        }

        return attempts;
    }

    private Attempt Try(LinkedCalculation calculation, Board board)
    {
        var numbers = new Dictionary<string, double>(calculation.Inputs.Count, StringComparer.Ordinal);
        var absent = new List<LinkedInput>();
        foreach (var input in calculation.Inputs)
        {
            if (board.Find(input.Key) is not { } source)
            {
                if (input.Info.Required || input.Info.Default is not null)
                {
                    return new Attempt(calculation) { Missing = input };
                }

                absent.Add(input);
                continue;
            }

            var value = input.InRoleUnit(source);
            if (!(value >= input.Info.Lowest && value <= input.Info.Highest))
            {
                return new Attempt(calculation) { Outside = (input, value) };
            }

            numbers[input.Info.Role] = value;
        }

        var outcome = call(calculation.Loaded.Calculation, new Inputs(numbers));

        // What it cannot do without here, though it may be absent elsewhere, is missing: that is no refusal of what was read.
        return outcome is Refused refused && absent.Find(i => i.Info.Role.Equals(refused.Role, StringComparison.Ordinal)) is { } needed
            ? new Attempt(calculation) { Missing = needed }
            : new Attempt(calculation) { Outcome = outcome, Given = numbers };
    }

    /// <summary>What one that ran gives when some of its sources have moved; null when it cannot be computed with them.</summary>
    /// <param name="moved">Source to its number in its own unit.</param>
    public Values? Again(Attempt before, IReadOnlyDictionary<string, double> moved)
    {
        var numbers = new Dictionary<string, double>(before.Given, StringComparer.Ordinal);
        foreach (var input in before.Calculation.Inputs)
        {
            if (moved.TryGetValue(input.Key, out var source))
            {
                var value = input.InRoleUnit(source);
                if (!(value >= input.Info.Lowest && value <= input.Info.Highest))
                {
                    return null;
                }

                numbers[input.Info.Role] = value;
            }
        }

        return call(before.Calculation.Loaded.Calculation, new Inputs(numbers)) as Values;
    }

    /// <summary>What could not be computed here has no number here: nothing goes on with that of an earlier sample as if it were this one's.</summary>
    private static void Post(Attempt attempt, Board board)
    {
        foreach (var output in attempt.Calculation.Outputs.Where(o => o.Point is not null))
        {
            board.Set(output.Point!.Tag, attempt.Values is { } values && values.Numbers.TryGetValue(output.Info.Id, out var number) ? output.InKeptUnit(number) : null);
        }
    }
}

/// <summary>Numbers by source, each in its source's unit: what was known, and over it what was computed.</summary>
internal sealed class Board(IReadOnlyDictionary<string, Quantity> known)
{
    private readonly Dictionary<string, double?> _set = new(StringComparer.Ordinal);

    public double? Find(string key) => _set.TryGetValue(key, out var value) ? value : known.GetValueOrDefault(key)?.Value;

    /// <param name="value">Null for what has no number, whatever lies below.</param>
    public void Set(string key, double? value) => _set[key] = value;
}
