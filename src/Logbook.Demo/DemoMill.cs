using Logbook.Checks;

namespace Logbook.Demo;

/// <summary>The invented mill: a simulated line and its people, who type into the desk like anyone else.</summary>
public static class DemoMill
{
    /// <summary>
    /// Types <paramref name="days"/> days of rounds, titrations, remarks and planted events into the desk's empty journal,
    /// under a simulated clock. One seed and one end give the same records.
    /// </summary>
    /// <param name="open">Makes the desk of a terminal with the given clock; called once. The caller disposes its store.</param>
    /// <param name="until">The demo's history ends here: now.</param>
    /// <param name="days">1 or more.</param>
    /// <param name="seed">Of everything that chance decides.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <returns>What was planted, oldest first, and where it must show.</returns>
    public static IReadOnlyList<PlantedEvent> Make(
        Func<TimeProvider, Desk> open, DateTimeOffset until, int days, int seed, IProgress<double>? progress = null) =>
        throw new NotImplementedException();
}
