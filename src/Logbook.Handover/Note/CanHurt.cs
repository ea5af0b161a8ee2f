namespace Logbook.Handover;

/// <summary>What can hurt, in full, and for every other kind that nothing is recorded: never that there is none.</summary>
internal static class CanHurt
{
    // 'seen' and 'permit' are ways to record the others, not kinds of their own.
    private static readonly string[] Kinds = ["inside", "locked", "defeated", "out", "acid", "gas"];

    public static NoteSection Of(ShiftFacts facts)
    {
        var hazards = Hazards.Of(facts.Site, facts.State, facts.AsOf);
        var silent = Kinds.Except(hazards.Select(h => h.Word), StringComparer.Ordinal).Concat(["injury", "release"]);
        return new NoteSection(
            "can-hurt",
            "CAN HURT",
            [.. hazards.Select(h => new NoteLine(h.Word, h.Text)), new NoteLine("others", $"{string.Join(", ", silent)}: none recorded; not declared")])
        {
            Beside = "as recorded here; the lock board and the permit office rule",
        };
    }
}
