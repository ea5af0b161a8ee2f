using Logbook.Checks;

namespace Logbook.Handover;

public enum CheckState { Coming, Due, Done, Late, NotTaken, Missed, NotApplicable }

/// <summary>One point of one slot of a round: what became of the check. Derived, never stored.</summary>
/// <param name="Seq">The entry that answered it.</param>
/// <param name="Why">Reason when it was not taken or does not apply.</param>
public sealed record DueCheck(
    string Round, string Point, DateTimeOffset DueAt, DateTimeOffset Opens, DateTimeOffset Closes, CheckState State,
    string ShiftId, long? Seq, DateTimeOffset? TakenAt, string? By, string? Why);

/// <summary>Which checks are due, done, late, not taken, missed or not applicable. Follows from the journal and the schedule in force.</summary>
public static class DueList
{
    /// <summary>Every check that falls due in [from, to), by due time, round and walking order.</summary>
    public static IReadOnlyList<DueCheck> Between(Desk desk, DateTimeOffset from, DateTimeOffset to) => throw new NotImplementedException();
}
