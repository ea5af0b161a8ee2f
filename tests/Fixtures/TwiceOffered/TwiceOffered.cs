using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Offers an id that a shipped plug-in offers too.</summary>
public sealed class TwiceOffered : ICalculation
{
    public CalculationInfo Info { get; } = Anything.Called("boiling-margin");

    public Outcome Run(Inputs inputs) => new Refused("x", "x is not accepted here");
}
