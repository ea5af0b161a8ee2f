using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>The audit's flags by what would settle them. What is only to be looked at comes last, and says so.</summary>
internal static class AuditGroups
{
    private const string Facts = "As recorded: what could hurt, what was missed, what was put right";

    private static readonly (string Title, string[] Flags)[] All =
    [
        ("A signature settles: a supervisor's, or that of who allowed it", ["refused", "unattended", "emergency", "to-countersign"]),
        ("Whoever was at the equipment settles: which of the two was true?", ["contradicted"]),
        ("Whoever owns it settles", ["reservation", "past-date", "carried-too-long", "not-seen", "unanswered", "order-unread", "recurrent"]),
        (Facts, ["refused", "unattended", "emergency", "read-again", "hazard", "missed", "late", "not-taken", "upset", "corrected", "entered-later"]),
        ("A check of the instrument settles; not findings about anyone", ["off-laboratory"]),
        ("The next reading settles; not findings about anyone", ["same-as-earlier", "varies-less"]),
        ("The site's files settle", ["limit-never", "limit-always", "always-not-taken"]),
    ];

    private static readonly (string Title, string[] Flags) Other = ("Other flags", []);

    /// <summary>The flags in the order of their groups, each group with its title before its first flag.</summary>
    public static IReadOnlyList<(string Title, IReadOnlyList<AuditFlag> Flags)> Of(IEnumerable<AuditFlag> flags)
    {
        var homes = flags.ToLookup(Home, StringComparer.Ordinal);
        return
        [
            .. All.Append(Other).Where(g => homes.Contains(g.Title))
                .Select(g => (g.Title, (IReadOnlyList<AuditFlag>)[.. homes[g.Title].OrderBy(f => Array.IndexOf(g.Flags, f.Flag)).ThenByDescending(f => f.At)])),
        ];
    }

    // What a supervisor signed for stays in the list as a fact.
    private static string Home(AuditFlag flag) =>
        flag.Settled ? Facts : All.FirstOrDefault(g => g.Flags.Contains(flag.Flag, StringComparer.Ordinal), Other).Title;
}
