using Logbook.Contracts;

namespace Logbook.Checks;

/// <summary>One output and the difference that moving one source made to it, in the kept unit; not a number when that could not be computed.</summary>
internal readonly record struct Contribution(string Source, double Moved);

/// <summary>
/// Kragten's way to propagate uncertainty (Analyst 119, 1994, 2161): each source is moved by its standard uncertainty
/// once, through the whole graph, and the differences add in squares. Results that share a source so share its error. A
/// method's own uncertainty moves its output, and with it what is computed from that.
/// </summary>
internal sealed class Kragten
{
    private readonly GraphPass _pass;
    private readonly Board _still;

    /// <summary>Those that ran, in the order of the graph.</summary>
    private readonly List<Attempt> _ran;

    /// <summary>Source to the places in that list that take it.</summary>
    private readonly Dictionary<string, List<int>> _takers = new(StringComparer.Ordinal);
    private readonly HashSet<string> _computed;
    private readonly Dictionary<(string Calculation, string Output), List<Contribution>> _contributions = [];

    public Kragten(GraphPass pass, IReadOnlyList<Attempt> attempts, Board still)
    {
        (_pass, _still) = (pass, still);
        _ran = [.. attempts.Where(a => a.Values is not null)];
        _computed = attempts.SelectMany(a => a.Calculation.Outputs).Where(o => o.Point is not null).Select(o => o.Point!.Tag).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < _ran.Count; i++)
        {
            foreach (var input in _ran[i].Calculation.Inputs)
            {
                TakersOf(input.Key).Add(i);
            }
        }
    }

    public IReadOnlyDictionary<(string Calculation, string Output), List<Contribution>> Contributions => _contributions;

    public void Run(IReadOnlyDictionary<string, Quantity> known)
    {
        foreach (var (key, source) in known)
        {
            if (source.U > 0 && !_computed.Contains(key))
            {
                Move(key, source.U, source.Name);
            }
        }

        foreach (var attempt in _ran)
        {
            MoveMethods(attempt);
        }
    }

    private void MoveMethods(Attempt attempt)
    {
        foreach (var output in attempt.Calculation.Outputs)
        {
            if (attempt.Values!.Numbers.TryGetValue(output.Info.Id, out var number) && output.MethodUInKeptUnit(number) is > 0 and var u)
            {
                Add(attempt.Calculation, output, CoverWords.Method, u);
                if (output.Point is { } point)
                {
                    Move(point.Tag, u, CoverWords.Method);
                }
            }
        }
    }

    /// <summary>Moves up; where that leaves what the calculation accepts, down.</summary>
    private void Move(string key, double u, string name)
    {
        var up = Differences(key, u);
        var down = up.Exists(d => double.IsNaN(d.Moved)) ? Differences(key, -u) : null;
        for (var i = 0; i < up.Count; i++)
        {
            var moved = double.IsNaN(up[i].Moved) ? -down![i].Moved : up[i].Moved;
            Add(up[i].Calculation, up[i].Output, name, moved);
        }
    }

    /// <summary>What each output downstream of the source does when it moves, in an order that does not depend on the direction.</summary>
    private List<(LinkedCalculation Calculation, LinkedOutput Output, double Moved)> Differences(string key, double by)
    {
        var moved = new Dictionary<string, double>(StringComparer.Ordinal) { [key] = _still.Find(key)!.Value + by };
        var takers = new SortedSet<int>(TakersOf(key));
        var differences = new List<(LinkedCalculation, LinkedOutput, double)>();
        while (takers.Count > 0)
        {
            var attempt = _ran[takers.Min];
            takers.Remove(takers.Min);
            var values = _pass.Again(attempt, moved);
            foreach (var output in attempt.Calculation.Outputs)
            {
                if (!attempt.Values!.Numbers.TryGetValue(output.Info.Id, out var before))
                {
                    continue;
                }

                var was = output.InKeptUnit(before);
                var now = values is not null && values.Numbers.TryGetValue(output.Info.Id, out var number) ? output.InKeptUnit(number) : double.NaN;
                differences.Add((attempt.Calculation, output, now - was));
                if (output.Point is { } point && now != was)
                {
                    moved[point.Tag] = now;
                    takers.UnionWith(TakersOf(point.Tag));
                }
            }
        }

        return differences;
    }

    private List<int> TakersOf(string key) =>
        _takers.TryGetValue(key, out var takers) ? takers : _takers[key] = [];

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
