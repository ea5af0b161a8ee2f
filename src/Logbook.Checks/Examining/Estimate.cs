using Logbook.Contracts;
using Logbook.Plant;

namespace Logbook.Checks.Examining;

/// <summary>One way to know a quantity: a reading itself, or a chain of calculations that begins at readings and constants.</summary>
/// <param name="Words">As a person says it: <c>from the causticity reached (lime reacted)</c>.</param>
/// <param name="Unit">The unit of what it gives.</param>
/// <param name="Sources">What it starts from, each in its own unit.</param>
/// <param name="Links">The calculations, each after those that it takes from; none for a reading.</param>
/// <param name="Result">The slot of what it gives: sources come first, then what the calculations give.</param>
internal sealed record Estimate(string Words, Unit Unit, IReadOnlyList<Source> Sources, IReadOnlyList<Link> Links, int Result)
{
    /// <summary>The derived point in which it lands, or the point that is read.</summary>
    public Point? Point { get; init; }

    /// <summary>Inside a sentence: <c>CaO that reacted (WL-CAO)</c>.</summary>
    public string Named => Point is { } point ? $"{CoverWords.Plain(point)} ({point.Tag})" : Words;

    /// <summary>How long after a move of what it takes it holds again.</summary>
    public TimeSpan Settles => Links.SelectMany(l => l.Gives).Select(g => g.Output.Settles).DefaultIfEmpty(TimeSpan.Zero).Max();

    /// <summary>Slots in all.</summary>
    public int Slots => Sources.Count + Links.Sum(l => l.Gives.Count);
}

/// <summary>One calculation of a chain.</summary>
/// <param name="Feeds">For each input its slot; null for a constant that is exact.</param>
/// <param name="Gives">What later ones take of it.</param>
internal sealed record Link(LinkedCalculation Calculation, IReadOnlyList<(LinkedInput Input, int? Slot)> Feeds, IReadOnlyList<Kept> Gives);

/// <summary>One output of a calculation in a chain.</summary>
/// <param name="Slot">Where it lands, in its kept unit.</param>
/// <param name="Method">The slot of the method's own error; null when it has none.</param>
internal sealed record Kept(LinkedOutput Output, int Slot, int? Method)
{
    public double With(double number, double error)
    {
        var kept = Output.InKeptUnit(number);
        return Output.MethodU?.IsShare == true ? kept * (1 + error) : kept + Units.ConvertDifference(error, Output.Unit, Output.KeptUnit);
    }
}

/// <summary>
/// Runs an estimate within one guarded pass. A calculation whose inputs are those of its first run is not run again: when one
/// source is moved, only what hangs on it is.
/// </summary>
internal sealed class EstimateRun(Estimate estimate, GuardedCall call)
{
    private readonly (double[] Inputs, double[] Gave)?[] _first = new (double[], double[])?[estimate.Links.Count];

    /// <param name="sources">A value for each source; NaN where there is none.</param>
    /// <returns>NaN when it gives no number.</returns>
    public double At(IReadOnlyList<double> sources)
    {
        var slots = new double[estimate.Slots];
        for (var i = 0; i < sources.Count; i++)
        {
            slots[i] = sources[i];
        }

        for (var i = 0; i < estimate.Links.Count; i++)
        {
            var link = estimate.Links[i];
            var gave = Gave(i, link, slots);
            for (var k = 0; k < link.Gives.Count; k++)
            {
                var given = link.Gives[k];
                slots[given.Slot] = given.With(gave[k], given.Method is { } m ? slots[m] : 0);
            }
        }

        return slots[estimate.Result];
    }

    private double[] Gave(int index, Link link, double[] slots)
    {
        double[] inputs = [.. link.Feeds.Select(f => f.Slot is { } slot ? f.Input.InRoleUnit(slots[slot]) : f.Input.Constant!.Value)];
        if (_first[index] is { } first && first.Inputs.AsSpan().SequenceEqual(inputs))
        {
            return first.Gave;
        }

        var gave = Run(link, inputs);
        _first[index] ??= (inputs, gave);
        return gave;
    }

    private double[] Run(Link link, double[] inputs)
    {
        var numbers = new Dictionary<string, double>(inputs.Length, StringComparer.Ordinal);
        for (var i = 0; i < inputs.Length; i++)
        {
            var info = link.Feeds[i].Input.Info;
            if (double.IsNaN(inputs[i]) && !info.Required && info.Default is null)
            {
                continue;
            }

            if (!(inputs[i] >= info.Lowest && inputs[i] <= info.Highest))
            {
                return [.. link.Gives.Select(_ => double.NaN)];
            }

            numbers[info.Role] = inputs[i];
        }

        var values = call(link.Calculation.Loaded.Calculation, new Inputs(numbers)) as Values;
        return [.. link.Gives.Select(g => values is not null && values.Numbers.TryGetValue(g.Output.Info.Id, out var number) ? number : double.NaN)];
    }
}
