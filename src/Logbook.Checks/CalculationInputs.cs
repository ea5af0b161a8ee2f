using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>What a pass is given: the calculations to run and their numbers by source.</summary>
/// <param name="Split">Calculations that cannot run, since readings of one sample would come from two entries.</param>
/// <param name="OutOfOrder">Calculations that cannot run, since a reading is below the one from which it counts on.</param>
internal sealed record PassInputs(
    IReadOnlyList<LinkedCalculation> Calculations, IReadOnlyDictionary<string, Quantity> Known, IReadOnlyList<MissingInput> Split, IReadOnlyList<OutOfOrder> OutOfOrder);

/// <summary>A number for which a calculation of this entry could not run.</summary>
/// <param name="NotYet">There never was one, or not at the hour of its lag: the journal is too young for it.</param>
internal sealed record MissingInput(LinkedCalculation Calculation, string Point, string Why, bool NotYet = false);

/// <summary>Two readings of this entry of which the later one counts on from the earlier and is below it.</summary>
internal sealed record OutOfOrder(LinkedCalculation Calculation, PointReading Reading, PointReading Before);

/// <summary>A calculation that rests with its equipment.</summary>
internal sealed record RestingCalculation(LinkedCalculation Calculation, string Equipment);

/// <summary>
/// Finds the calculations whose inputs changed and the numbers that they take: from this entry first, else the latest
/// value that is not stale; a sample's readings from one entry or not at all; lagged ones as they were.
/// </summary>
internal sealed class CalculationInputs(Day day, IReadOnlyList<PointReading> readings, DateTimeOffset at)
{
    private readonly Dictionary<string, PointReading> _here = readings.Where(r => r.Number is not null).ToDictionary(r => r.Point.Tag, StringComparer.Ordinal);
    private readonly Dictionary<string, Quantity> _known = new(StringComparer.Ordinal);
    private readonly Dictionary<string, long> _entry = new(StringComparer.Ordinal);
    private readonly List<RestingCalculation> _resting = [];
    private readonly PastValues _past = new(day, at);

    /// <summary>Given in this entry; no record has the number yet.</summary>
    private const long ThisEntry = long.MaxValue;

    public PassInputs Gather()
    {
        var touched = Touched();
        foreach (var input in touched.SelectMany(c => c.Inputs).DistinctBy(i => i.Key, StringComparer.Ordinal))
        {
            Find(input);
        }

        var disordered = touched.SelectMany(Disorder).ToList();
        var split = touched.Where(c => !disordered.Exists(d => d.Calculation == c)).Select(SplitSample).OfType<MissingInput>().ToList();
        var cannot = split.Select(s => s.Calculation).Concat(disordered.Select(d => d.Calculation)).ToHashSet();
        foreach (var output in cannot.SelectMany(c => c.Outputs).Where(o => o.Point is not null))
        {
            _known.Remove(output.Point!.Tag); // as with one that could not be computed: an earlier sample does not stand in for this one
        }

        return new PassInputs([.. touched.Where(c => !cannot.Contains(c))], _known, [.. split.Where(s => TakesFromHere(s.Calculation))], disordered);
    }

    /// <summary>Calculations of this entry's numbers that were not run, since their equipment stands.</summary>
    public IEnumerable<RestingCalculation> Resting => _resting.Where(r => TakesFromHere(r.Calculation));

    /// <summary>
    /// Why a calculation could not run: only where a number of it was given in this entry, and the missing one does not
    /// come from a calculation that has spoken for itself.
    /// </summary>
    public MissingInput? Missing(Attempt attempt, IReadOnlyList<Attempt> all)
    {
        if (attempt.Missing is not { Point: { } point } input || !TakesFromHere(attempt.Calculation)
            || all.Any(a => a.Calculation.Outputs.Any(o => o.Point == point)))
        {
            return null;
        }

        return _past.WhyMissing(attempt.Calculation, point, input.Lag);
    }

    private bool TakesFromHere(LinkedCalculation calculation) => calculation.Triggers.Any(p => _here.ContainsKey(p.Tag));

    private List<LinkedCalculation> Touched()
    {
        var changed = _here.Keys.ToHashSet(StringComparer.Ordinal);
        var touched = new List<LinkedCalculation>();
        foreach (var calculation in day.Graph.InOrder.Where(c => c.Triggers.Any(p => changed.Contains(p.Tag)) && HasItsSample(c)))
        {
            if (Standing(calculation) is { } equipment)
            {
                _resting.Add(new RestingCalculation(calculation, equipment));
                continue;
            }

            touched.Add(calculation);
            changed.UnionWith(calculation.Outputs.Where(o => o.Point is not null).Select(o => o.Point!.Tag));
        }

        return touched;
    }

    /// <summary>A calculation of a sample is run when that sample comes, and never again with old end points and a new time.</summary>
    private bool HasItsSample(LinkedCalculation calculation) =>
        calculation.CurrentPoints.All(p => p.Sample is null) || calculation.CurrentPoints.Any(p => p.Sample is not null && _here.ContainsKey(p.Tag));

    /// <summary>The equipment of its inputs that stands, so that it rests; null when it runs, or gives a point that is judged always.</summary>
    private string? Standing(LinkedCalculation calculation) => calculation.IsSafety ? null
        : calculation.CurrentPoints.FirstOrDefault(p => !p.Always && !day.AtWork(p.Equipment, at))?.Equipment;

    private void Find(LinkedInput input)
    {
        if (input.Constant is { } constant)
        {
            _known[input.Key] = constant;
            return;
        }

        var point = input.Point!;
        if (input.Lag == TimeSpan.Zero && _here.TryGetValue(point.Tag, out var reading))
        {
            Know(input, reading.Number!.Value, point.U?.Of(reading.Number.Value) ?? 0, ThisEntry);
        }
        else if (_past.Find(point, input.Lag) is { } past)
        {
            Know(input, past.Value, past.U, past.Seq);
        }
    }

    private void Know(LinkedInput input, double value, double u, long entry)
    {
        _known[input.Key] = new Quantity(value, u, CoverWords.Name(input.Point!));
        _entry[input.Key] = entry;
    }

    /// <summary>Readings of this entry that cannot be true together, whether the rest of the sample is there or not.</summary>
    private IEnumerable<OutOfOrder> Disorder(LinkedCalculation calculation) =>
        from input in calculation.Inputs
        where input.Info.CountsOnFrom is not null
        let first = calculation.Inputs.FirstOrDefault(i => i.Info.Role.Equals(input.Info.CountsOnFrom, StringComparison.Ordinal))
        let later = Here(input)
        let before = first is null ? null : Here(first)
        where later is not null && before is not null && first!.Info.Unit.Equals(input.Info.Unit, StringComparison.Ordinal) && input.InRoleUnit(later.Number!.Value) < first.InRoleUnit(before.Number!.Value)
        select new OutOfOrder(calculation, later, before);

    private PointReading? Here(LinkedInput input) => input.Lag == TimeSpan.Zero && input.Point is { } point ? _here.GetValueOrDefault(point.Tag) : null;

    /// <summary>A reading of a sample that comes from another entry than the rest: the calculation does not mix them.</summary>
    private MissingInput? SplitSample(LinkedCalculation calculation)
    {
        foreach (var sample in calculation.Inputs.Where(i => i.Point?.Sample is not null && i.Lag == TimeSpan.Zero && _entry.ContainsKey(i.Key)).GroupBy(i => i.Point!.Sample, StringComparer.Ordinal))
        {
            var newest = sample.Max(i => _entry[i.Key]);
            if (sample.FirstOrDefault(i => _entry[i.Key] != newest) is { Point: { } other })
            {
                return new MissingInput(calculation, other.Tag, $"{other.Tag} is not in the same entry as the rest of its sample");
            }
        }

        return null;
    }
}
