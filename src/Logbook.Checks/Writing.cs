using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>The records that a person writes beside entries. Each checks what was given and appends one record.</summary>
public static class Writing
{
    /// <summary>Puts the folder's files in force. Only an engineer may, and only when <c>check</c> finds no mistake.</summary>
    public static Written Adopt(Desk desk, string why, string by) => throw new NotImplementedException();

    /// <summary>Puts a reading of entry <paramref name="target"/> right: its results and findings are run again with its day's limits and inputs.</summary>
    public static Written Correct(Desk desk, long target, TypedReading reading, string why, string by) => throw new NotImplementedException();

    public static Written Remark(Desk desk, string text, string? on, long? related, string by) => throw new NotImplementedException();

    public static Written ChangeState(Desk desk, string equipment, string state, DateTimeOffset? since, string? why, string by) => throw new NotImplementedException();

    public static Written AddCarried(Desk desk, Carry item, string by) => throw new NotImplementedException();

    public static Written CloseCarried(Desk desk, long id, string why, string by) => throw new NotImplementedException();
}
