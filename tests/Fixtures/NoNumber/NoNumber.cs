using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>Answers with what is no answer: NaN, an unknown output, nothing, a refusal of a role that it does not take.</summary>
public sealed class NoNumber : ICalculation
{
    public CalculationInfo Info { get; } = Anything.Called("no-number");

    public Outcome Run(Inputs inputs) => inputs["x"] switch
    {
        0 => Of("y", double.NaN),
        1 => Of("y", double.PositiveInfinity),
        2 => Of("z", 1),
        3 => new Values(new Dictionary<string, double>(StringComparer.Ordinal)),
        4 => new Refused("w", "w is wrong"),
        5 => new Failed("made by a plug-in"),
        6 => null!,
        _ => Of("y", inputs["x"]),
    };

    private static Values Of(string id, double value) => new(new Dictionary<string, double>(StringComparer.Ordinal) { [id] = value });
}
