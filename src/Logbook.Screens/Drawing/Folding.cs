using Logbook.Handover;
using Logbook.Journal;
using Logbook.Plant;

namespace Logbook.Screens;

/// <summary>A finding, and what follows from the same reading and is told under it in one line.</summary>
internal sealed record Folded<T>(T Lead, IReadOnlyList<T> Following);

/// <summary>
/// One mistyped reading brings about many findings: what follows from it stands under it. What breaks a limit of its own is
/// folded only where the reading itself is doubted, and what is urgent only under the doubted reading that is urgent too.
/// </summary>
internal static class Folding
{
    public static IReadOnlyList<Folded<OpenFinding>> Of(Site site, NowView now)
    {
        var told = now.Hazards.SelectMany(h => h.Findings).Select(f => (f.Seq, f.Number)).ToHashSet();
        return Of(site, now.StandsOut, open => open.Finding, open => open.Seq, open => !told.Contains((open.Seq, open.Number)), (one, other) => (one.Answer is null) == (other.Answer is null));
    }

    /// <summary>The findings of one entry.</summary>
    public static IReadOnlyList<Folded<Finding>> Of(Site site, IReadOnlyList<Finding> findings) => Of(site, findings, finding => finding, _ => 0, _ => true, (_, _) => true);

    /// <summary>What follows, in words: how many, and each urgent one by its name.</summary>
    public static string Words(Site site, IEnumerable<Finding> following)
    {
        var all = following.ToList();
        var urgent = all.Where(f => f.Level == Level.Urgent).Select(f => f.Point is { } tag ? site.FindPoint(tag)?.Description ?? tag : f.Text).Distinct(StringComparer.Ordinal).ToList();
        return FormattableString.Invariant($"and {all.Count} that {(all.Count == 1 ? "follows" : "follow")} from it") + (urgent.Count > 0 ? $", urgent: {string.Join("; ", urgent)}" : "");
    }

    private static List<Folded<T>> Of<T>(Site site, IReadOnlyList<T> all, Func<T, Finding> finding, Func<T, long> entry, Func<T, bool> mayFold, Func<T, T, bool> alike)
        where T : class
    {
        var links = new Links(site);
        var readings = site.Points.Select(p => p.Tag).Except(site.Calculations.SelectMany(c => c.Outputs.Values), StringComparer.OrdinalIgnoreCase).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var under = new Dictionary<T, T>(ReferenceEqualityComparer.Instance);
        // The worst finding of a reading leads; of two readings that make the same, the worse one. A later entry computed with it too, for it is still the newest.
        foreach (var reading in all.Where(f => mayFold(f) && finding(f) is { Level: > Level.Note, Point: { } tag } && readings.Contains(tag))
            .GroupBy(f => finding(f).Point!, StringComparer.OrdinalIgnoreCase).OrderByDescending(g => g.Max(f => finding(f).Level)))
        {
            var lead = reading.MaxBy(f => finding(f).Level)!;
            var doubted = reading.Any(f => IsDoubt(finding(f)));
            foreach (var follower in all.Where(f => f != lead && mayFold(f) && !under.ContainsKey(f) && entry(f) >= entry(lead) && Follows(links, finding(lead), finding(f), doubted) && alike(lead, f)))
            {
                under[follower] = lead;
            }
        }

        // A lead stands where the first of its own stood: nothing urgent moves down.
        return [.. all.Select(f => under.GetValueOrDefault(f, f)).Distinct(ReferenceEqualityComparer.Instance).Cast<T>().Select(lead => new Folded<T>(lead, [.. all.Where(f => under.GetValueOrDefault(f) == lead)]))];
    }

    private static bool Follows(Links links, Finding lead, Finding other, bool doubted) => other.Point is { } tag
        && (tag.Equals(lead.Point, StringComparison.OrdinalIgnoreCase) ? other.Level < Level.Urgent
            : links.Makes(lead.Point!, tag) && (other.Level < Level.Urgent ? doubted || IsNotComputed(other) : doubted && lead.Level == Level.Urgent));

    /// <summary>Kept though it is beyond what is possible, or does not fit the others.</summary>
    private static bool IsDoubt(Finding finding) => finding.Code == "range.outside" || finding.Code.StartsWith("examine.", StringComparison.Ordinal);

    private static bool IsNotComputed(Finding finding) => finding.Code.StartsWith("calculation.", StringComparison.Ordinal);
}
