using Logbook.Demo.Instruments;

namespace Logbook.Demo.Planted;

/// <summary>The density transmitter of the weak wash leaves the laboratory little by little: too slowly for any one entry to tell.</summary>
internal static class DriftingTransmitter
{
    private const string Tag = "WW-D";

    /// <summary>kg/m3 an hour: three quarters of one in a day.</summary>
    private const double Rate = 0.75 / 24;

    private static readonly TimeSpan _long = TimeSpan.FromDays(6.5);

    public static void Plant(Scene scene, Script script)
    {
        var since = scene.Until - _long;
        if (since < FirstFit.At(scene))
        {
            return;
        }

        script.Faults.Add(new InstrumentFault(Tag, since, DateTimeOffset.MaxValue, FaultKind.Drift, Rate));
        script.Events.Add(new PlantedEvent(
            "drifting-transmitter", since, Tag, "audit",
            "The weak wash density begins to drift, less than a kg/m3 in a day: `audit` names the transmitter that no longer agrees with the laboratory, since when and by how much.", null));
    }
}
