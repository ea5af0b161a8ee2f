namespace Logbook.Demo;

/// <summary>Something that was planted, and where it must show: the truth to compare the program with.</summary>
/// <param name="Name">titration-error, stuck-transmitter, missed-round, near-boil-over, eyewash-out, acid-wash, overdue-hose, emergency-relief or reservation.</param>
/// <param name="At">When it happened.</param>
/// <param name="Point">The point it is about, when it is about one.</param>
/// <param name="Where">finding, now, due, audit or note.</param>
/// <param name="Text">One plain sentence for the person who tries the demo.</param>
/// <param name="Seq">The record that it stands in; null when it stands in none or in many.</param>
public sealed record PlantedEvent(string Name, DateTimeOffset At, string? Point, string Where, string Text, long? Seq);
