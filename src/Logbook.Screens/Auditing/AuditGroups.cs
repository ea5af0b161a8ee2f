using Logbook.Handover;

namespace Logbook.Screens;

/// <summary>The audit's flags by what would settle them. What is only to be looked at comes last, and says so.</summary>
internal static class AuditGroups
{
    private static readonly (string Title, string[] Flags)[] All =
    [
        ("A supervisor's signature settles", ["refused", "unattended", "emergency", "reservation"]),
        ("Whoever owns it settles", ["past-date", "carried-too-long", "not-seen", "unanswered", "order-unread", "recurrent"]),
        ("Nothing to settle: facts as they are", ["missed", "late", "not-taken", "upset", "corrected", "entered-later"]),
        ("A check of the instrument settles; not findings about anyone", ["off-laboratory"]),
        ("The next reading settles; not findings about anyone", ["same-as-earlier", "varies-less"]),
        ("The site's files settle", ["limit-never", "limit-always", "always-not-taken"]),
    ];

    /// <summary>The flags in the order of their groups, each group with its title before its first flag.</summary>
    public static IReadOnlyList<(string Title, IReadOnlyList<AuditFlag> Flags)> Of(IEnumerable<AuditFlag> flags)
    {
        var known = flags.ToList();
        var rest = known.Where(f => !All.Any(g => g.Flags.Contains(f.Flag, StringComparer.Ordinal))).ToList();
        return
        [
            .. All.Select(g => (g.Title, (IReadOnlyList<AuditFlag>)[.. known.Where(f => g.Flags.Contains(f.Flag, StringComparer.Ordinal)).OrderBy(f => Array.IndexOf(g.Flags, f.Flag)).ThenByDescending(f => f.At)]))
                .Append(("Other flags", rest)).Where(g => g.Item2.Count > 0),
        ];
    }
}
