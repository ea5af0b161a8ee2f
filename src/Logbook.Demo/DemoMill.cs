using Logbook.Checks;

namespace Logbook.Demo;

/// <summary>The invented mill: a simulated line and its people, who type into the desk like anyone else.</summary>
public static class DemoMill
{
    /// <summary>Types <paramref name="days"/> days of rounds, remarks and planted events into the journal, under a simulated clock.</summary>
    /// <param name="open">Makes the desk of a terminal with the given clock.</param>
    /// <param name="until">The demo's last day ends here.</param>
    public static IReadOnlyList<PlantedEvent> Make(Func<TimeProvider, Desk> open, DateTimeOffset until, int days, int seed) => throw new NotImplementedException();
}

/// <summary>Something that was planted, and where it must show: the truth to compare the program with.</summary>
/// <param name="Name">titration-error, stuck-transmitter, missed-round, near-boil-over, eyewash-out, acid-wash or overdue-hose.</param>
public sealed record PlantedEvent(string Name, DateTimeOffset At, string? Point, string Where, string Text);
