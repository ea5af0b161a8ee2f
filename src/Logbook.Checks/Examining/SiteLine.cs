using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Logbook.Checks.CrossExamination;
using Role = Logbook.Checks.CrossExamination.Role;

namespace Logbook.Checks.Examining;

/// <summary>What of a site stands in relation to what: read off its calculations, its points and its balances.</summary>
internal sealed class SiteLine
{
    private readonly Dictionary<string, int> _places;

    private SiteLine(IReadOnlyList<Subject> subjects, IReadOnlyList<Row> rows, IReadOnlyList<string> noWitness)
    {
        (Subjects, Rows, NoWitness) = (subjects, rows, noWitness);
        _places = subjects.Select((s, i) => (s.Name, i)).ToDictionary(s => s.Name, s => s.i, StringComparer.OrdinalIgnoreCase);
        Typed = [.. subjects.Select(s => s.Typed)];
        Identity = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', Described()))))[..16];
    }

    /// <summary>Readings first, then constants, then methods.</summary>
    public IReadOnlyList<Subject> Subjects { get; }

    public IReadOnlyList<Row> Rows { get; }

    /// <summary>Why some estimate is no witness, each in words.</summary>
    public IReadOnlyList<string> NoWitness { get; }

    /// <summary>Constants by their place; zero for readings and methods.</summary>
    public IReadOnlyList<double> Typed { get; }

    /// <summary>Names what is compared with what, and how well each is known: what was learned of one line is not used for another.</summary>
    public string Identity { get; }

    public int Readings => Subjects.TakeWhile(s => s.Role == Role.Reading).Count();

    /// <summary>The place of a reading; null when it stands in no relation.</summary>
    public int? PlaceOf(string tag) => _places.TryGetValue(tag, out var place) && place < Readings ? place : null;

    /// <summary>As the engine takes it.</summary>
    /// <param name="usual">The usual value of each reading: some are uncertain by a share of it.</param>
    public Line With(IReadOnlyList<double> usual) =>
        new([.. Subjects.Select((s, i) => s.As(i < usual.Count ? usual[i] : 0, _places))], [.. Rows.Select(r => r.Name)]);

    public static SiteLine Of(CalculationGraph graph) => new Builder(graph).Build();

    /// <summary>What was learned while rows were taken as they are says nothing of rows less the errors that are expected in them.</summary>
    private const string Form = "rows less expected errors";

    private IEnumerable<string> Described() =>
    [
        Form,
        .. Subjects.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Name} {s.Role} {s.U.Amount:R} {s.U.IsShare} {s.Typed:R} {s.Unit} {string.Join(',', s.Moves)}")),
        .. Rows.Select(r => $"{r.Name}{(r.Settles > 0 ? string.Create(CultureInfo.InvariantCulture, $" settles {r.Settles:R}") : "")}: {string.Join(", ", r.Takes.Select(t => string.Create(CultureInfo.InvariantCulture, $"{Subjects[t.Input.Parameter].Name} {t.Input.Lag:R} {t.Input.Stale:R} {t.Prompts}")))}"),
    ];

    private sealed class Builder(CalculationGraph graph)
    {
        private readonly Dictionary<string, Subject> _subjects = new(StringComparer.Ordinal);
        private readonly List<string> _noWitness = [];

        public SiteLine Build()
        {
            List<(string Quantity, Estimate Estimate)> all = [.. Outputs(), .. ReadPoints()];
            var pace = new Pace(graph.Site);
            var compared = all.GroupBy(e => e.Quantity, e => e.Estimate, StringComparer.Ordinal)
                .SelectMany(g => Comparing.Rows(g.Key, [.. g], _subjects, pace))
                .Concat(graph.Site.Balances.Select(b => Comparing.Balance(b, Balanced, _subjects, pace)).OfType<Draft>())
                .ToList();

            var used = compared.SelectMany(r => r.Ways).SelectMany(w => w.Sources).Select(s => s.Key).ToHashSet(StringComparer.Ordinal);
            List<string> keys = [.. _subjects.Where(s => used.Contains(s.Key)).OrderBy(s => s.Value.Role).Select(s => s.Key)];
            var places = keys.Select((k, i) => (k, i)).ToDictionary(k => k.k, k => k.i, StringComparer.Ordinal);
            return new SiteLine([.. keys.Select(k => Known(_subjects[k], places))], [.. compared.Select(d => d.Placed(places, _subjects, pace))], _noWitness);
        }

        /// <summary>Only what takes part can really move.</summary>
        private static Subject Known(Subject subject, Dictionary<string, int> places) => subject with { Moves = [.. subject.Moves.Where(places.ContainsKey)] };

        private IEnumerable<(string Quantity, Estimate Estimate)> Outputs() =>
            from calculation in graph.InOrder
            from output in calculation.Outputs
            where output.Estimates is not null
            let estimate = Witness(chain => chain.Of(calculation, output))
            where estimate is not null
            select (output.Estimates, estimate);

        private IEnumerable<(string Quantity, Estimate Estimate)> ReadPoints() =>
            from point in graph.Site.Points
            where point.Estimates is not null && point.Kind == Plant.PointKind.Read
            let estimate = Witness(chain => chain.Of(point))
            where estimate is not null
            select (point.Estimates, estimate);

        private Estimate? Balanced(string tag) => Witness(chain => chain.Of(graph.Site.FindPoint(tag)!));

        private Estimate? Witness(Func<Chain, Estimate> follow)
        {
            var chain = new Chain(graph, _subjects);
            var estimate = follow(chain);
            if (chain.NoWitness is { } why)
            {
                _noWitness.Add(why);
                return null;
            }

            return estimate;
        }
    }
}
