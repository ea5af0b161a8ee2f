using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>One reading as it was typed.</summary>
/// <param name="Point">Tag.</param>
/// <param name="Text">What was typed: <c>103.4</c>, <c>103.4 degC</c>, <c>2</c> for a choice, or <c>-</c> for not taken.</param>
/// <param name="Place">File, line and column when it came from a file.</param>
public sealed record TypedReading(string Point, string Text, Place Place)
{
    public string? Unit { get; init; }

    public DateTimeOffset? At { get; init; }

    public string? Why { get; init; }

    public string? Second { get; init; }

    public string? Retyped { get; init; }

    public string? Remark { get; init; }
}

/// <summary>What a person wants to save at once.</summary>
public sealed record EntryRequest(string By, IReadOnlyList<TypedReading> Readings)
{
    public string? Round { get; init; }

    /// <summary>When it was read, for readings that do not say so themselves; now when null.</summary>
    public DateTimeOffset? At { get; init; }

    public DateTimeOffset? WalkStart { get; init; }

    public DateTimeOffset? WalkEnd { get; init; }

    public string? Imported { get; init; }

    /// <summary>The entry whose readings are taken a second time.</summary>
    public long? SecondOf { get; init; }

    public string? Remark { get; init; }
}

/// <summary>A record that is on the disk, or the mistakes for which nothing was saved.</summary>
public sealed record Written(JournalRecord? Record, IReadOnlyList<Mistake> Mistakes)
{
    internal static Written Nothing(params IReadOnlyList<Mistake> mistakes) => new(null, mistakes);

    internal static Written Saved(JournalRecord record) => new(record, []);
}
