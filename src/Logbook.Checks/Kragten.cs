using Logbook.Contracts;

namespace Logbook.Checks;

/// <summary>One output and the difference that moving one source made to it, in the kept unit; not a number when that could not be computed.</summary>
internal readonly record struct Contribution(string Source, double Moved);

/// <summary>
/// Kragten's way to propagate uncertainty (Analyst 119, 1994, 2161): each source is moved by its standard uncertainty
/// once, through the whole graph, and the differences add in squares. Results that share a source so share its error. A
/// method's own uncertainty moves its output, and with it what is computed from that.
/// </summary>
internal sealed class Kragten(GraphPass pass, IReadOnlyList<Attempt> attempts, Board still)
{
    private readonly Dictionary<(string Calculation, string Output), List<Contribution>> _contributions = [];

    public IReadOnlyDictionary<(string Calculation, string Output), List<Contribution>> Contributions => _contributions;

    public void Run(IReadOnlyDictionary<string, Quantity> known)
    {
        var ran = attempts.Where(a => a.Values is not null).ToList();
        var computed = attempts.SelectMany(a => a.Calculation.Outputs).Where(o => o.Point is not null).Select(o => o.Point!.Tag).ToHashSet(StringComparer.Ordinal);
        foreach (var (key, source) in known)
        {
            if (source.U > 0 && !computed.Contains(key))
            {
                Move(ran, key, source.U, source.Name);
            }
        }

        foreach (var attempt in ran)
        {
            MoveMethods(ran, attempt);
        }
    }

    private void MoveMethods(List<Attempt> ran, Attempt attempt)
    {
        foreach (var output in attempt.Calculation.Outputs)
        {
            if (attempt.Values!.Numbers.TryGetValue(output.Info.Id, out var number) && output.MethodUInKeptUnit(number) is > 0 and var u)
            {
                Add(attempt.Calculation, output, CoverWords.Method, u);
                if (output.Point is { } point)
                {
                    Move(ran, point.Tag, u, CoverWords.Method);
                }
            }
        }
    }

    /// <summary>Moves up; where that leaves what the calculation accepts, down.</summary>
    private void Move(List<Attempt> ran, string key, double u, string name)
    {
        var up = Differences(ran, key, u);
        var down = up.Exists(d => double.IsNaN(d.Moved)) ? Differences(ran, key, -u) : null;
        for (var i = 0; i < up.Count; i++)
        {
            var moved = double.IsNaN(up[i].Moved) ? -down![i].Moved : up[i].Moved;
            Add(up[i].Calculation, up[i].Output, name, moved);
        }
    }

    /// <summary>What each output downstream of the source does when it moves, in an order that does not depend on the direction.</summary>
    private List<(LinkedCalculation Calculation, LinkedOutput Output, double Moved)> Differences(List<Attempt> ran, string key, double by)
    {
        var board = new Board(still.Find);
        board.Set(key, still.Find(key)!.Value + by);
        var differences = new List<(LinkedCalculation, LinkedOutput, double)>();
        foreach (var attempt in ran.Where(a => a.Calculation.Inputs.Any(i => board.Moved(i.Key))))
        {
            var values = pass.Try(attempt.Calculation, board).Values;
            foreach (var output in attempt.Calculation.Outputs.Where(o => attempt.Values!.Numbers.ContainsKey(o.Info.Id)))
            {
                var was = output.InKeptUnit(attempt.Values!.Numbers[output.Info.Id]);
                var now = values is not null && values.Numbers.TryGetValue(output.Info.Id, out var number) ? output.InKeptUnit(number) : double.NaN;
                differences.Add((attempt.Calculation, output, now - was));
                if (output.Point is { } point && now != was)
                {
                    board.Set(point.Tag, now);
                }
            }
        }

        return differences;
    }

    private void Add(LinkedCalculation calculation, LinkedOutput output, string name, double moved)
    {
        var key = (calculation.Name, output.Info.Id);
        if (!_contributions.TryGetValue(key, out var list))
        {
            _contributions[key] = list = [];
        }

        list.Add(new Contribution(name, moved));
    }
}
