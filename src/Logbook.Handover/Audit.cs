using Logbook.Checks;

namespace Logbook.Handover;

/// <summary>One fact of the audit, as it is, without accusation.</summary>
/// <param name="Flag">missed, late, not-taken, corrected or carried-too-long.</param>
public sealed record AuditFlag(string Flag, string ShiftId, DateTimeOffset At, string? Round, string? Point, string Text, long? Seq);

public static class Audit
{
    /// <summary>The flags of [from, to), by flag and time.</summary>
    public static IReadOnlyList<AuditFlag> Between(Desk desk, DateTimeOffset from, DateTimeOffset to) => throw new NotImplementedException();
}
