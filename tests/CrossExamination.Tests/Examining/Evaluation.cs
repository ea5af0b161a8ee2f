using CrossExamination.Tests.Plants;
using Logbook.Checks.CrossExamination;

namespace CrossExamination.Tests.Examining;

/// <summary>Everything that is measured of one kind of line, over some seeds.</summary>
internal sealed class Evaluation
{
    private int _clean;
    private int _cleanFlagged;
    private int _cleanAccused;

    public Trial? Last { get; private set; }

    public Score All { get; } = new();

    public Dictionary<(string Kind, double Size), Score> ByKind { get; } = [];

    public Dictionary<string, Steps> Keeping { get; } = new(StringComparer.Ordinal);

    public Dictionary<string, Steps> Breaking { get; } = new(StringComparer.Ordinal);

    public Steps Double { get; } = new();

    public double CleanFlagged => 100.0 * _cleanFlagged / _clean;

    public double CleanAccused => 100.0 * _cleanAccused / _clean;

    /// <param name="plant">Which simulator, from a seed.</param>
    /// <param name="lag">Hours from liming to white liquor, as the site has them.</param>
    /// <param name="seeds">One line each.</param>
    /// <param name="positions">How often on each line something is tried.</param>
    /// <param name="history">Entries to learn from.</param>
    public static Evaluation Run(Func<int, Plant> plant, double lag, IEnumerable<int> seeds, int positions, int history = 1200)
    {
        var evaluation = new Evaluation();
        foreach (var seed in seeds)
        {
            var trial = evaluation.Last = new Trial(plant(seed), new SiteRelations(lag), history, seed + 1);
            for (var i = 0; i < positions; i++)
            {
                evaluation.Clean(trial, 30);
                evaluation.At(trial, new Dice(seed + (1000 * i)));
            }
        }

        return evaluation;
    }

    private void Clean(Trial trial, int entries)
    {
        for (var i = 0; i < entries; i++)
        {
            var said = trial.Clean();
            _clean++;
            _cleanFlagged += said.Gate.Open ? 1 : 0;
            _cleanAccused += said.Verdict.Named is not null ? 1 : 0;
        }
    }

    private void At(Trial trial, Dice dice)
    {
        var faults = Fault.All(trial.Relations);
        foreach (var fault in faults)
        {
            var size = Fault.Sizes[dice.Next(Fault.Sizes.Length)];
            var said = trial.With(fault, size);
            All.Add(fault.Culprit, said);
            Get(ByKind, (fault.Kind, size)).Add(fault.Culprit, said);
        }

        bool Reading(Said e) => e.Verdict.Named is { } n && trial.Relations.Line.Parameters[n].Role == Role.Reading;
        foreach (var step in PlantStep.Keeping)
        {
            Get(Keeping, step.Kind).Add(trial.With(step), e => e.Verdict.Named is not null);
        }

        foreach (var step in PlantStep.Breaking)
        {
            Get(Breaking, step.Kind).Add(trial.With(step), e => Reading(e) && e.Verdict.WithMethod is null);
        }

        for (var i = 0; i < 2; i++)
        {
            var (one, other) = (faults[dice.Next(faults.Count)], faults[dice.Next(faults.Count)]);
            if (one.Culprit != other.Culprit)
            {
                Double.Add(trial.With(one, other), e => Reading(e) && e.Verdict.Named != one.Culprit && e.Verdict.Named != other.Culprit);
            }
        }
    }

    private static TValue Get<TKey, TValue>(Dictionary<TKey, TValue> from, TKey key)
        where TKey : notnull
        where TValue : new()
    {
        if (!from.TryGetValue(key, out var value))
        {
            from[key] = value = new TValue();
        }

        return value;
    }
}

/// <summary>How often something was wrongly said.</summary>
internal sealed class Steps
{
    private int _trials;
    private int _first;
    private int _any;

    public double First => 100.0 * _first / _trials;

    public double Any => 100.0 * _any / _trials;

    public int Trials => _trials;

    public void Add(IReadOnlyList<Said> said, Func<Said, bool> wrong)
    {
        _trials++;
        _first += wrong(said[0]) ? 1 : 0;
        _any += said.Any(wrong) ? 1 : 0;
    }

    public static Steps Sum(IEnumerable<Steps> all) => all.Aggregate(new Steps(), (sum, s) =>
    {
        sum._trials += s._trials;
        sum._first += s._first;
        sum._any += s._any;
        return sum;
    });
}
