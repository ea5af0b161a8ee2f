using Logbook.Checks;

namespace Logbook.Handover;

/// <summary>The handover note before it has a format: sections in their order, each line with its words.</summary>
public sealed record HandoverNote
{
    public required string Site { get; init; }

    public required string ShiftId { get; init; }

    /// <summary>Reasons to take longer, in words; empty on a normal shift.</summary>
    public required IReadOnlyList<string> TakeLonger { get; init; }

    public required IReadOnlyList<NoteSection> Sections { get; init; }

    /// <summary>At most three, chosen by what is open or out of limits.</summary>
    public required IReadOnlyList<NoteCaution> Cautions { get; init; }

    /// <summary>Points worth a trend: their series over the shift.</summary>
    public required IReadOnlyList<NoteTrend> Trends { get; init; }

    public required long Records { get; init; }

    public required string Head { get; init; }

    /// <summary>The note of the shift that covers <paramref name="at"/>, as the journal stands now.</summary>
    public static HandoverNote Of(Desk desk, DateTimeOffset at) => throw new NotImplementedException();
}

/// <param name="Id">can-hurt, not-normal, moving, not-done, stocks, still-open, coming, orders.</param>
/// <param name="Title">As printed: <c>CAN HURT</c>.</param>
public sealed record NoteSection(string Id, string Title, IReadOnlyList<NoteLine> Lines);

/// <param name="Label">What it is about, a word or two: <c>slaker</c>.</param>
public sealed record NoteLine(string Label, string Text);

public sealed record NoteCaution(string Hazard, string Text, string Ppe, string FirstAid, string Source, string Revision, bool Draft);

public sealed record NoteTrend(string Point, string Title, string Unit, IReadOnlyList<(DateTimeOffset At, double Value)> Values, double? WatchLow, double? WatchHigh, double? UrgentLow, double? UrgentHigh);
