using Logbook.Checks;

namespace Logbook.Demo;

/// <summary>Somebody comes to the terminal and saves one thing.</summary>
/// <param name="At">When they save it.</param>
/// <param name="Save">What they do; null when on the spot there turns out to be nothing to save.</param>
internal sealed record Act(DateTimeOffset At, Func<Desk, Written?> Save)
{
    /// <summary>The planted event whose record this is.</summary>
    public PlantedEvent? Plants { get; init; }
}
