using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Throws at every run.</summary>
public sealed class Throws : ICalculation
{
    public CalculationInfo Info { get; } = Anything.Called("throws");

    public Outcome Run(Inputs inputs) => throw new InvalidOperationException("not today\nsecond line");
}
