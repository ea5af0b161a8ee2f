namespace Logbook.Contracts;

/// <summary>
/// One pure calculation of the plant's arithmetic. A plug-in is an assembly with public classes that implement this
/// and have a constructor without parameters. No clock, no files, no state: the same inputs give the same outcome.
/// </summary>
public interface ICalculation
{
    /// <summary>What the calculation is, takes and gives. Constant for the life of the object.</summary>
    CalculationInfo Info { get; }

    /// <summary>
    /// Computes. The host has already converted every input to the unit of its role, checked it against the role's
    /// range, and put in the defaults; every required role is present.
    /// </summary>
    /// <returns><see cref="Values"/>, or <see cref="Refused"/> when the inputs cannot be true together.</returns>
    Outcome Run(Inputs inputs);
}
