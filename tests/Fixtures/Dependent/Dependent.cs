using System.IO.Hashing;
using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Right in every way; brings a library of its own along, which the program does not have.</summary>
public sealed class Dependent : ICalculation
{
    public CalculationInfo Info { get; } = Anything.Called("dependent");

    public Outcome Run(Inputs inputs) => new Values(new Dictionary<string, double>(StringComparer.Ordinal)
    {
        ["y"] = Crc32.HashToUInt32("123456789"u8),
    });
}
