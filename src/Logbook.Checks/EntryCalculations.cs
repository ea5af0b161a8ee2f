using System.Globalization;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>Every calculation whose inputs changed in an entry, with uncertainty, and the limits of what it gives.</summary>
internal static class EntryCalculations
{
    public static (IReadOnlyList<Result> Results, IReadOnlyList<Finding> Findings) Run(Day day, IReadOnlyList<PointReading> readings, DateTimeOffset at)
    {
        var inputs = new CalculationInputs(day, readings, at);
        var (calculations, known, split, outOfOrder) = inputs.Gather();
        var run = GraphRun.Run(day.Guard, calculations, known);
        var missing = split.Concat(run.Attempts.Select(a => inputs.Missing(a, run.Attempts)).OfType<MissingInput>()).ToList();
        string Older(LinkedCalculation calculation) => OlderInputs.Words(day, calculation, readings, at);
        List<Finding> findings =
        [
            .. NotLinked(day, readings),
            .. run.Attempts.SelectMany(a => CalculationFindings.Of(a, Older)),
            .. CalculationFindings.NotPossible(run.Attempts),
            .. CalculationFindings.OutOfOrder(outOfOrder),
            .. CalculationFindings.Missing(missing),
            .. CalculationFindings.Resting(day, inputs.Resting),
        ];
        var given = run.Results().ToList();
        foreach (var (attempt, output, result) in given)
        {
            if (output.Point is { } point)
            {
                var others = given.Where(g => g.Output != output && g.Output.Estimates == output.Estimates && output.Estimates is not null).Select(g => (g.Output, g.Result));
                findings.AddRange(LimitCheck.Findings(day, point, result.Value, at, Against(output, result, others)).Select(f => f with { Text = f.Text + Older(attempt.Calculation), Evidence = [.. f.Evidence, .. Evidence(attempt, result)] }));
            }
        }

        return ([.. given.Select(g => g.Result)], findings);
    }

    /// <summary>Other ways to know the same, as far as they lie beyond what the uncertainties explain (three in all).</summary>
    private static string Against(LinkedOutput output, Result result, IEnumerable<(LinkedOutput Output, Result Result)> others)
    {
        List<string> against =
        [
            .. from other in others
               where Units.CanConvert(other.Output.KeptUnit, output.KeptUnit)
               let value = Units.Convert(other.Result.Value, other.Output.KeptUnit, output.KeptUnit)
               let u = Units.ConvertDifference(other.Result.U ?? double.NaN, other.Output.KeptUnit, output.KeptUnit)
               where Math.Abs(value - result.Value) > Beyond * Math.Sqrt((u * u) + Math.Pow(result.U ?? double.NaN, 2)) // of what has none nothing is said
               select $"{Words.Value(output.Point!, value)} by {other.Output.Point?.Tag ?? $"{other.Result.Name}, {other.Result.Output.Replace('-', ' ')}"}",
        ];
        return against.Count == 0 ? "" : "but " + string.Join(" and ", against);
    }

    private const double Beyond = 3;

    private static string[] Evidence(Attempt attempt, Result result)
    {
        var u = result.U is { } known ? $"standard uncertainty {Figures.Two(known)}{Words.Behind(result.Unit)} ({result.Covers})" : "uncertainty not known";
        return [u, .. attempt.Values!.Steps];
    }

    /// <summary>A binding in force that today's plug-ins cannot serve is said, not passed over.</summary>
    private static IEnumerable<Finding> NotLinked(Day day, IReadOnlyList<PointReading> readings) =>
        from binding in day.Graph.Unlinked
        where binding.Inputs.Values.OfType<InputSource.FromPoint>().Any(i => readings.Any(r => r.Point.Tag.Equals(i.Tag, StringComparison.OrdinalIgnoreCase)))
        select new Finding(Level.Note, "calculation.unlinked", null, $"{binding.Name} ({binding.Use}) is not computed: its binding has a mistake (`check` names it), or its plug-in is not loaded (`plugins list` says why)", []);
}
