using Logbook.Contracts;

namespace Logbook.Fixtures;

/// <summary>An Info that is right in every way but says nothing.</summary>
internal static class Anything
{
    public static CalculationInfo Called(string id) => new()
    {
        Id = id,
        Title = "Fixture",
        System = "site",
        Purpose = "Fixture.",
        Formula = "y = x",
        Source = "none",
        LeavesOut = "Everything.",
        Inputs = [new InputInfo("x", "%", "any number", -1000, 1000)],
        Outputs = [new OutputInfo("y", "%", "the same number")],
    };
}
