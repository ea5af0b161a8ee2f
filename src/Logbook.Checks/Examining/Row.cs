using Logbook.Checks.CrossExamination;
using Logbook.Contracts;
using Logbook.Plant;
using MathNet.Numerics.LinearAlgebra;

namespace Logbook.Checks.Examining;

/// <summary>Two ways to know one quantity, or a balance of the site over several: what must come out as zero but for an offset.</summary>
/// <param name="Name">The quantity and the two ways; one row, one name.</param>
/// <param name="Quantity">The quantity alone, in words.</param>
/// <param name="Unit">The unit of the difference.</param>
/// <param name="Ways">The estimates; of two that are compared, the one that is read most often comes first.</param>
/// <param name="Combine">From what the ways give, in their own units, to the difference.</param>
/// <param name="Takes">Every source of the ways, each once.</param>
/// <param name="Feeds">For each way, where its sources stand in <paramref name="Takes"/>.</param>
internal sealed record Row(
    string Name, string Quantity, Unit Unit, IReadOnlyList<Estimate> Ways, Func<IReadOnlyList<double>, double> Combine,
    IReadOnlyList<RowInput> Takes, IReadOnlyList<IReadOnlyList<int>> Feeds)
{
    /// <summary>True for a balance of the site's own.</summary>
    public bool IsBalance { get; init; }

    /// <summary>Hours after a move of what it takes until it holds again.</summary>
    public double Settles { get; } = Ways.Max(w => w.Settles).TotalHours;

    /// <summary>True when everything that must be new for the row to speak was taken in the entry.</summary>
    public bool MaySpeak(Func<int, bool> taken) => Takes.Any(t => t.Prompts) && Takes.Where(t => t.Prompts && t.Source.Required).All(t => taken(t.Input.Parameter));

    /// <summary>The row at an entry; null when it has nothing to say.</summary>
    /// <param name="pasts">The readings up to the entry.</param>
    /// <param name="typed">Constants by their place; zero for methods.</param>
    /// <param name="call">The guarded call of this pass.</param>
    /// <param name="slopes">False where the difference alone is wanted.</param>
    public RowSeen? At(Pasts pasts, IReadOnlyList<double> typed, double hours, GuardedCall call, bool slopes)
    {
        int[] present = [.. Enumerable.Range(0, Takes.Count).Where(i => Takes[i].Source.Required || !Takes[i].Input.Read || pasts.At(Takes[i].Input, hours).Count > 0)];
        var runs = Ways.Select(w => new EstimateRun(w, call)).ToList();
        double[] Gives(Vector<double> v)
        {
            var taken = new double[Takes.Count];
            Array.Fill(taken, double.NaN);
            for (var i = 0; i < present.Length; i++)
            {
                taken[present[i]] = v[i];
            }

            return [.. runs.Select((run, k) => run.At([.. Feeds[k].Select(i => taken[i])]))];
        }

        double[]? first = null;
        double Difference(Vector<double> v)
        {
            var gives = Gives(v);
            first ??= gives;
            return Combine(gives);
        }

        var comparison = new Comparison(Name, [.. present.Select(i => Takes[i].Input)], Difference);
        var seen = slopes ? comparison.At(pasts, typed, hours) : Alone(comparison, pasts, typed, hours);
        return seen is null || Stale([.. present.Select(i => Takes[i])], pasts, hours, seen) ? null : new RowSeen(this, seen with { Sensitivities = Speaking(seen), Settles = Settles }, first!);
    }

    /// <summary>What the row does not hang on says nothing in it; but one stays, for how far the row looks back.</summary>
    private static IReadOnlyList<Sensitivity> Speaking(RowReading seen) =>
        seen.Sensitivities.Where(s => s.Slope != 0).ToList() is { Count: > 0 } speaking ? speaking : seen.Sensitivities;

    /// <summary>One that the row may do without, hangs on here, and that was due with the others but not taken.</summary>
    private static bool Stale(IReadOnlyList<RowInput> present, Pasts pasts, double hours, RowReading seen) => present.Any(t =>
        t is { Prompts: true, Source.Required: false } && pasts.At(t.Input, hours)[0].Back > 0 && seen.Sensitivities.Any(s => s.Parameter == t.Input.Parameter && s.Slope != 0));

    /// <summary>The difference without its slopes, for what only has to be expected later.</summary>
    private static RowReading? Alone(Comparison comparison, Pasts pasts, IReadOnlyList<double> typed, double hours)
    {
        var parts = comparison.Inputs.Select(i => i.Read ? pasts.At(i, hours) : [new Past(typed[i.Parameter], 1, 0)]).ToList();
        if (parts.Exists(p => p.Count == 0))
        {
            return null;
        }

        var difference = comparison.Difference(Vector<double>.Build.Dense([.. parts.Select(p => p.Sum(one => one.Value * one.Weight))]));
        return double.IsFinite(difference)
            ? new RowReading(difference, [.. comparison.Inputs.SelectMany((i, j) => parts[j].Select(p => new Sensitivity(i.Parameter, 0, p.Back, i.Lag)))])
            : null;
    }
}

/// <summary>A source of a row.</summary>
/// <param name="Input">As the engine takes it.</param>
/// <param name="Prompts">The row speaks when this is read.</param>
internal sealed record RowInput(Source Source, ComparisonInput Input, bool Prompts);

/// <summary>A row as an entry had it.</summary>
/// <param name="Gives">What each of the ways gave.</param>
internal sealed record RowSeen(Row Row, RowReading Reading, IReadOnlyList<double> Gives);
