using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Cannot be made: its constructor wants something.</summary>
public sealed class NoConstructor(string id) : ICalculation
{
    public CalculationInfo Info { get; } = Anything.Called(id);

    public Outcome Run(Inputs inputs) => new Refused("x", "x is not accepted here");
}
