using Logbook.Demo.Instruments;
using Logbook.Demo.Line;

namespace Logbook.Demo;

/// <summary>What is going to happen beside honest rounds; filled by everything that is planted.</summary>
internal sealed class Script
{
    public List<PlantChange> Changes { get; } = [];

    public List<InstrumentFault> Faults { get; } = [];

    public List<Act> Acts { get; } = [];

    public List<PlantedEvent> Events { get; } = [];

    /// <summary>Readings outside any round.</summary>
    public List<Rereading> Rereadings { get; } = [];

    /// <summary>Slots that nobody does.</summary>
    public HashSet<(string Round, DateTimeOffset DueAt)> LeftUndone { get; } = [];

    /// <summary>Slots whose figures are those of the sheet before.</summary>
    public HashSet<(string Round, DateTimeOffset DueAt)> Copied { get; } = [];

    /// <summary>Slots whose entry is the record of a planted event.</summary>
    public Dictionary<(string Round, DateTimeOffset DueAt), PlantedEvent> Planted { get; } = [];
}
