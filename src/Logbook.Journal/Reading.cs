using System.Text.Json.Serialization;

namespace Logbook.Journal;

/// <summary>One reading of an entry.</summary>
[JsonConverter(typeof(ReadingByMember))]
public sealed record Reading
{
    public required string Point { get; init; }

    /// <summary>Exactly what was typed; null when the reading was not taken.</summary>
    public string? Typed { get; init; }

    /// <summary>The value in the point's unit, or the digit of a choice; null when not taken.</summary>
    public double? Value { get; init; }

    /// <summary>The unit of the point on that day.</summary>
    public required string Unit { get; init; }

    /// <summary>When it was read.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Why it was not taken, or why a value outside the possible range stands.</summary>
    public string? Why { get; init; }

    /// <summary>A second reading of the same point, as typed.</summary>
    public string? Second { get; init; }

    /// <summary>What was typed first and changed before saving.</summary>
    public string? Retyped { get; init; }

    public string? Remark { get; init; }

    public bool NotTaken => Value is null;
}

/// <summary>One output of one calculation.</summary>
/// <param name="Name">The binding's name in the site.</param>
/// <param name="Output">The output's id.</param>
/// <param name="Point">Tag of the derived point that it lands in, if any.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="U">Standard uncertainty in <paramref name="Unit"/>; null when nothing is known of it.</param>
/// <param name="Covers">What the uncertainty covers: <c>burette and acid</c>.</param>
/// <param name="By">Plug-in and version that computed it.</param>
[JsonConverter(typeof(ResultByMember))]
public sealed record Result(string Name, string Output, string? Point, double Value, string Unit, double? U, string? Covers, string By);

/// <summary>Something the program noticed about an entry, with its evidence.</summary>
/// <param name="Level">note, watch or urgent.</param>
/// <param name="Code">Stable, for machines: <c>limit.urgent-high</c>.</param>
/// <param name="Text">One or two plain sentences.</param>
public sealed record Finding(
    Level Level, [property: JsonConverter(typeof(SharedText))] string Code, [property: JsonConverter(typeof(SharedText))] string? Point, [property: JsonConverter(typeof(SharedText))] string Text, IReadOnlyList<string> Evidence)
{
    /// <summary>Tag of the point that would tell, read or sampled a second time; null when none would.</summary>
    public string? Settles { get; init; }

    /// <summary>True for what only goes on since an earlier entry: kept with each reading, told once. Null when it is new.</summary>
    public bool? Again { get; init; }

    /// <summary>Sequence number of the entry that found it, where it stands again here though the verdict of this entry is of something else, or there is none; else null.</summary>
    public long? Of { get; init; }

    /// <summary>low or high, the side of the limit that was broken; null for any other finding.</summary>
    public string? LimitSide => Code.StartsWith("limit.", StringComparison.Ordinal) ? Code[(Code.LastIndexOf('-') + 1)..] : null;
}

public static class FindingsToTell
{
    /// <summary>Without what was told before and only goes on.</summary>
    public static IEnumerable<Finding> New(this IEnumerable<Finding> findings) => findings.Where(f => f.Again is not true);
}

/// <summary>How much a finding asks for.</summary>
public enum Level
{
    Note,
    Watch,
    Urgent,
}
