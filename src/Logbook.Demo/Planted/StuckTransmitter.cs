using Logbook.Demo.Instruments;

namespace Logbook.Demo.Planted;

/// <summary>The density transmitter of the raw green liquor goes on showing one value.</summary>
internal static class StuckTransmitter
{
    private const string Tag = "RG-D";

    /// <summary>How much sound history there must be before anyone can call a steady value odd.</summary>
    private static readonly TimeSpan _learned = TimeSpan.FromHours(26);

    public static void Plant(Scene scene, Script script)
    {
        var since = scene.Until.AddHours(-14);
        if (since - scene.Start < _learned)
        {
            return;
        }

        script.Faults.Add(new InstrumentFault(Tag, since, DateTimeOffset.MaxValue, FaultKind.Stuck));
        script.Events.Add(new PlantedEvent(
            "stuck-transmitter", since, Tag, "finding",
            "The raw green liquor density shows the same value hour after hour, more often than chance allows at its resolution.", null));
    }
}
