using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Its constructor never comes back.</summary>
public sealed class NeverMade : ICalculation
{
    public NeverMade()
    {
        while (true)
        {
            Thread.Sleep(10);
        }
    }

    public CalculationInfo Info { get; } = Anything.Called("never-made");

    public Outcome Run(Inputs inputs) => new Values(new Dictionary<string, double>(StringComparer.Ordinal) { ["y"] = 1 });
}
