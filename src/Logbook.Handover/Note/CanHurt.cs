namespace Logbook.Handover;

/// <summary>What can hurt, in full, and for every other kind that nothing is recorded: never that there is none.</summary>
internal static class CanHurt
{
    // 'seen' and 'permit' are ways to record the others, not kinds of their own.
    private static readonly string[] Kinds = ["inside", "locked", "defeated", "out", "acid", "gas"];

    public static NoteSection Of(ShiftFacts facts)
    {
        var hazards = Hazards.Of(facts.Site, facts.State, facts.AsOf);
        var said = hazards.Select(h => h.Word).ToHashSet(StringComparer.Ordinal);
        if (said.Contains("seen"))
        {
            // What was seen bad may be any of these: that none is recorded would not be true.
            said.UnionWith(["defeated", "out"]);
        }

        var silent = Kinds.Where(k => !said.Contains(k)).Concat(["injury", "release"]);
        return new NoteSection(
            "can-hurt",
            "CAN HURT",
            [.. hazards.Select(h => new NoteLine(h.Word, h.Text)), new NoteLine("others", $"{string.Join(", ", silent)}: none recorded; not declared")])
        {
            Beside = "as recorded here; the lock board and the permit office rule",
        };
    }
}
