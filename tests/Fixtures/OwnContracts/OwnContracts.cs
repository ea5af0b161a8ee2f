using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Right in itself, but brings a copy of the contracts along.</summary>
public sealed class OwnContracts : ICalculation
{
    public CalculationInfo Info { get; } = Anything.Called("own-contracts");

    public Outcome Run(Inputs inputs) => new Refused("x", "x is not accepted here");
}
