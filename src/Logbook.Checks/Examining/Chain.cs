using Logbook.Plant;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>Follows a number back through the graph of calculations to the readings and constants that it hangs on.</summary>
/// <param name="graph">The site's calculations.</param>
/// <param name="subjects">Receives whatever may be wrong, by its key.</param>
internal sealed class Chain(CalculationGraph graph, Dictionary<string, Subject> subjects)
{
    private readonly List<Source> _sources = [];
    private readonly List<(LinkedCalculation Calculation, TimeSpan Lag, List<(LinkedInput, Node?)> Feeds, List<(LinkedOutput Output, Node? Method)> Gives)> _links = [];

    /// <summary>A place that gets its slot when the chain is whole: a source, or an output of a link.</summary>
    private sealed record Node(int Source, int Link, int Output);

    /// <summary>Why what was followed is no witness; null when it is.</summary>
    public string? NoWitness { get; private set; }

    /// <summary>A reading as the estimate.</summary>
    public Estimate Of(Point point) => Whole(Point(point, TimeSpan.Zero, required: true), CoverWordsOf(point), point.Unit) with { Point = point };

    /// <summary>An output as the estimate.</summary>
    public Estimate Of(LinkedCalculation calculation, LinkedOutput output) =>
        Whole(Output(calculation, output, TimeSpan.Zero, required: true), $"{calculation.Name}, {output.Info.Id.Replace('-', ' ')}", output.KeptUnit) with { Point = output.Point };

    private static string CoverWordsOf(Point point) => $"{point.Description.Split(',')[0]}, {point.Tag}";

    private Node? Point(Point point, TimeSpan lag, bool required)
    {
        if (point.Kind == PointKind.Derived)
        {
            foreach (var calculation in graph.InOrder)
            {
                if (calculation.Outputs.FirstOrDefault(o => o.Point == point) is { } output)
                {
                    return Output(calculation, output, lag, required);
                }
            }

            NoWitness ??= $"no calculation gives {point.Tag}";
            return null;
        }

        if (point.Choices.Count > 0 || Spread(point) is not { } u)
        {
            NoWitness ??= $"{point.Tag} has no uncertainty (u or resolution in points.csv)";
            return null;
        }

        subjects.TryAdd(point.Tag, new Subject(point.Tag, Role.Reading, u) { Point = point, Unit = point.Unit, Words = $"{point.Description} ({point.Tag})" });
        return From(point.Tag, lag, required);
    }

    /// <summary>What is shown in steps is uncertain by these at least.</summary>
    private static Uncertainty? Spread(Point point) => point.U ?? (point.Resolution is { } r and > 0 ? new Uncertainty(r / Math.Sqrt(12), false) : null);

    private Node From(string key, TimeSpan lag, bool required)
    {
        var at = _sources.FindIndex(s => s.Key == key && s.Lag == lag);
        if (at < 0)
        {
            _sources.Add(new Source(key, lag) { Required = required });
            return new Node(_sources.Count - 1, -1, -1);
        }

        _sources[at] = _sources[at] with { Required = _sources[at].Required || required };
        return new Node(at, -1, -1);
    }

    private Node? Output(LinkedCalculation calculation, LinkedOutput output, TimeSpan lag, bool required)
    {
        List<(LinkedInput, Node?)> feeds = [.. calculation.Inputs.Select(i => (i, Input(calculation, i, lag, required && (i.Info.Required || i.Info.Default is not null))))];
        var link = _links.FindIndex(l => l.Calculation == calculation && l.Lag == lag);
        if (link < 0)
        {
            _links.Add((calculation, lag, feeds, []));
            link = _links.Count - 1;
        }

        foreach (var role in output.Info.NeedsFitted.Where(role => !IsFitted(calculation, role)))
        {
            NoWitness ??= $"{calculation.Name}, {output.Info.Id}: give '{role}' in site.toml with the date it was fitted";
        }

        var gives = _links[link].Gives;
        var at = gives.FindIndex(g => g.Output == output);
        if (at < 0)
        {
            gives.Add((output, Method(calculation, output)));
            at = gives.Count - 1;
        }

        return new Node(-1, link, at);
    }

    /// <summary>Fitted by the site with its date, or read.</summary>
    private static bool IsFitted(LinkedCalculation calculation, string role) =>
        calculation.Binding.Inputs.GetValueOrDefault(role) is InputSource.FromPoint or InputSource.Constant { Fitted: not null };

    private Node? Input(LinkedCalculation calculation, LinkedInput input, TimeSpan lag, bool required)
    {
        if (input.Constant is not { } constant)
        {
            return Point(input.Point!, lag + input.Lag, required);
        }

        if (constant.U <= 0)
        {
            return null;
        }

        // The same figure under the same role of the same calculation is one constant, however many bindings write it.
        var key = $"{calculation.Binding.Use}.{input.Info.Role}={constant.Value:R}";
        subjects.TryAdd(key, new Subject($"{calculation.Name}.{input.Info.Role}", Role.Constant, new Uncertainty(constant.U, false))
        {
            Typed = constant.Value, Unit = input.Unit, Words = $"the site's figure for the {input.Info.Role.Replace('-', ' ')} of '{calculation.Name}'",
        });
        return From(key, TimeSpan.Zero, required);
    }

    private Node? Method(LinkedCalculation calculation, LinkedOutput output)
    {
        if (output.MethodU is not { Amount: > 0 } u)
        {
            return null;
        }

        var key = $"{calculation.Binding.Use}: {output.Info.Id} within {u.Amount:R}{(u.IsShare ? " of it" : "")}";
        subjects.TryAdd(key, new Subject($"{calculation.Name}: {output.Info.Id}", Role.Method, u)
        {
            Unit = output.KeptUnit,
            Words = $"the method of '{calculation.Name}, {output.Info.Id.Replace('-', ' ')}'",
            WhenOff = output.Info.WhenOff,
            Moves = calculation.Binding.Moves.GetValueOrDefault(output.Info.Id) ?? [.. output.Info.Moves.SelectMany(role => Behind(calculation, role)).Distinct(StringComparer.Ordinal)],
        });
        return From(key, TimeSpan.Zero, required: true);
    }

    /// <summary>Tags that are read, behind the point of a role.</summary>
    private IEnumerable<string> Behind(LinkedCalculation calculation, string role) =>
        calculation.Inputs.FirstOrDefault(i => i.Info.Role == role)?.Point is { } point ? Behind(point) : [];

    private IEnumerable<string> Behind(Point point) => point.Kind == PointKind.Read
        ? [point.Tag]
        : graph.InOrder.FirstOrDefault(c => c.Outputs.Any(o => o.Point == point)) is { } giver
            ? giver.Inputs.Where(i => i.Point is not null && (i.Info.Required || i.Info.Default is not null)).SelectMany(i => Behind(i.Point!))
            : [];

    private Estimate Whole(Node? result, string words, Unit unit)
    {
        var first = new int[_links.Count];
        var next = _sources.Count;
        for (var i = 0; i < _links.Count; i++)
        {
            first[i] = next;
            next += _links[i].Gives.Count;
        }

        int? Slot(Node? node) => node is null ? null : node.Link < 0 ? node.Source : first[node.Link] + node.Output;
        var links = _links.Select((l, i) => new Link(
            l.Calculation,
            [.. l.Feeds.Select(f => (f.Item1, Slot(f.Item2)))],
            [.. l.Gives.Select((g, k) => new Kept(g.Output, first[i] + k, Slot(g.Method)))]));
        return new Estimate(words, unit, [.. _sources], [.. links], Slot(result) ?? 0);
    }
}
