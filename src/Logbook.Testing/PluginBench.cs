using Logbook.Checks;
using Logbook.Contracts;
using Logbook.Plant;

namespace Logbook.Testing;

/// <summary>
/// A bench for one calculation of a plug-in: give roles as a person would type them, read outputs. It converts units,
/// checks ranges and puts in defaults as the program does, and throws <see cref="BenchException"/> with one sentence
/// where the program would refuse.
/// </summary>
/// <example><c>new PluginBench(new Causticity()).Run("a=29.37 mL", "b=34.33", "c=39.68").Value("causticity")</c></example>
public sealed class PluginBench(ICalculation calculation)
{
    private readonly LoadedCalculation _loaded = new(new Watched(calculation), "bench");

    /// <summary>How long a run may take. The program gives two seconds to an entry's whole pass; a machine that runs tests is busier.</summary>
    public TimeSpan Deadline { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Runs with <c>role=VALUE[ UNIT]</c> each.</summary>
    public BenchRun Run(params string[] inputs) => Run(inputs, []);

    /// <summary>Runs with standard uncertainties, <c>role=U</c> or <c>role=2%</c> each, propagated by Kragten's way.</summary>
    public BenchRun Run(string[] inputs, string[] uncertainties)
    {
        var run = CalculationRun.ByHand(_loaded, inputs, uncertainties, new BenchGuard(Deadline));
        return run.Value is { } value ? new BenchRun(value) : throw new BenchException(string.Join("\n", run.Mistakes));
    }

    /// <summary>The sentence with which these inputs are refused.</summary>
    public string Refusal(params string[] inputs)
    {
        var run = CalculationRun.ByHand(_loaded, inputs, [], new BenchGuard(Deadline));
        return run.Value is null ? string.Join("\n", run.Mistakes) : throw new BenchException("not refused");
    }

    /// <summary>What is wrong with the calculation's own description; empty when it is fit to be loaded.</summary>
    public IReadOnlyList<string> Faults() => BenchFaults.Of(calculation.Info);

    /// <summary>Lets a calculation answer only what its description promises.</summary>
    private sealed class Watched(ICalculation calculation) : ICalculation
    {
        public CalculationInfo Info => calculation.Info;

        public Outcome Run(Inputs inputs)
        {
            var outcome = calculation.Run(inputs);
            return Broken(outcome) is { } promise ? throw new BenchException($"{Info.Id} {promise}") : outcome;
        }

        private string? Broken(Outcome outcome) => outcome switch
        {
            Refused refused when Info.Inputs.All(i => !i.Role.Equals(refused.Role, StringComparison.Ordinal)) => $"refuses for '{refused.Role}', which is none of its roles",
            Values values => values.Numbers.Where(n => Info.Outputs.All(o => !o.Id.Equals(n.Key, StringComparison.Ordinal))).Select(n => $"gave '{n.Key}', which is none of its outputs")
                .Concat(values.Numbers.Where(n => !double.IsFinite(n.Value)).Select(n => $"gave no number for '{n.Key}'")).FirstOrDefault(),
            _ => null,
        };
    }
}

/// <summary>What a run on the bench gave.</summary>
public sealed class BenchRun(HandRun run)
{
    public IReadOnlyList<string> Notes => run.Notes;

    public IReadOnlyList<string> Steps => run.Steps;

    /// <summary>True when the output could be computed.</summary>
    public bool Has(string output) => run.Outputs.Any(o => o.Id.Equals(output, StringComparison.Ordinal));

    /// <summary>The output in its own unit.</summary>
    public double Value(string output) => Find(output).Value;

    /// <summary>The output in another unit.</summary>
    public double Value(string output, string unit)
    {
        var found = Find(output);
        return Units.Convert(found.Value, Units.Find(found.Unit)!, Units.Find(unit) ?? throw new BenchException($"unit '{unit}' is unknown"));
    }

    /// <summary>Its standard uncertainty; null when none is known.</summary>
    public double? U(string output) => Find(output).U;

    /// <summary>What the uncertainty covers, in words.</summary>
    public string? Covers(string output) => Find(output).Covers;

    private HandOutput Find(string output) => run.Outputs.FirstOrDefault(o => o.Id.Equals(output, StringComparison.Ordinal))
        ?? throw new BenchException($"no output '{output}'; it gave {string.Join(", ", run.Outputs.Select(o => o.Id))}");
}

/// <summary>Why the bench, like the program, would not go on.</summary>
public sealed class BenchException(string message) : Exception(message);
