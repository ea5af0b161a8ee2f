using Logbook.Checks;
using Logbook.Contracts;

namespace Logbook.Testing;

/// <summary>A calculation out of a few lines, for tests that need one but not a plug-in.</summary>
public sealed class Formula(string id, IReadOnlyList<InputInfo> inputs, IReadOnlyList<OutputInfo> outputs, Func<Inputs, Outcome> run) : ICalculation
{
    public CalculationInfo Info { get; } = new()
    {
        Id = id,
        Title = "Test of " + id,
        System = "site",
        Purpose = "for tests",
        Formula = "as the test says",
        Source = "invented",
        LeavesOut = "everything else",
        Inputs = inputs,
        Outputs = outputs,
    };

    public Outcome Run(Inputs inputs) => run(inputs);

    /// <summary>As the host would have loaded it.</summary>
    public LoadedCalculation Loaded => new(this, "Tests 1.0");

    /// <summary>Values of the outputs, each by its id.</summary>
    public static Values Give(params (string Output, double Number)[] numbers) =>
        new(numbers.ToDictionary(n => n.Output, n => n.Number, StringComparer.Ordinal));
}
