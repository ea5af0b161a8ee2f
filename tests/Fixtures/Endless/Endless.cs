using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Never comes back.</summary>
public sealed class Endless : ICalculation
{
    public CalculationInfo Info { get; } = Anything.Called("endless");

    public Outcome Run(Inputs inputs)
    {
        while (true)
        {
            Thread.Sleep(10);
        }
    }
}
