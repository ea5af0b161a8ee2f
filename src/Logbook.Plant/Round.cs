namespace Logbook.Plant;

/// <summary>A set of points that is walked together.</summary>
public sealed record Round
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public required Schedule Schedule { get; init; }

    /// <summary>How long before its due time a reading counts for it.</summary>
    public TimeSpan Early { get; init; } = TimeSpan.FromMinutes(15);

    /// <summary>How long after its due time a reading is still on time.</summary>
    public TimeSpan Late { get; init; } = TimeSpan.FromMinutes(15);

    /// <summary>How long the walk takes.</summary>
    public TimeSpan Takes { get; init; } = TimeSpan.FromMinutes(25);

    /// <summary>Tags in walking order.</summary>
    public required IReadOnlyList<string> Points { get; init; }

    /// <summary>True when it is walked first and typed later.</summary>
    public bool Field { get; init; }
}

/// <summary>When a round falls due.</summary>
public abstract record Schedule
{
    /// <summary>Elapsed time from each shift's start: <c>every = "1h"</c>.</summary>
    public sealed record Every(TimeSpan Interval) : Schedule;

    /// <summary>Wall-clock times of each day: <c>at = ["08:00", "16:00"]</c>.</summary>
    public sealed record At(IReadOnlyList<TimeOnly> Times) : Schedule;

    /// <summary>Once in each <c>shift</c>, <c>day</c> or <c>week</c>, due by its end.</summary>
    public sealed record Per(string Period) : Schedule;
}
