using Logbook.Journal;

namespace Logbook.Checks;

/// <summary>
/// Who may change what others may do is judged by the records alone: a state that is kept beside them has no chain that would
/// show who changed it.
/// </summary>
public static class Rights
{
    /// <summary>Why rights cannot be judged on this desk; null when its state follows from the records. Reads the whole journal.</summary>
    public static string? WhyNot(Desk desk) =>
        StateForm.Write(desk.State).AsSpan().SequenceEqual(StateForm.Write(Replay.FromRecords(desk.Store, desk.State.Head.Seq)))
            ? null
            : $"the state kept in journal/states/{desk.Store.Snapshot().Head.Seq}.json does not follow from the records, and nobody's rights are judged by it: "
                + "find out who wrote it, delete the folder journal/states (it is made anew), then try again";
}
