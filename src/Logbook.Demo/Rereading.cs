using Logbook.Checks;
using Logbook.Demo.Instruments;
using Logbook.Plant;

namespace Logbook.Demo;

/// <summary>Somebody reads a few points between the rounds, because something is going on.</summary>
internal sealed record Rereading(DateTimeOffset At, IReadOnlyList<string> Tags, string Remark)
{
    public PlantedEvent? Plants { get; init; }

    public Act Act(Scene scene, Reader reader) => new(At, desk => RecordEntry.Run(desk, Request(scene, reader))) { Plants = Plants };

    private EntryRequest Request(Scene scene, Reader reader) =>
        new(scene.Staff.Panel(At), [.. Tags.Select(tag => new TypedReading(tag, reader.Read(scene.Point(tag), At), Place.Unknown))])
        {
            At = At,
            Remark = Remark,
        };
}
