using System.Collections.Immutable;

namespace Logbook.Journal;

/// <summary>What one judgement does to the findings that stand.</summary>
/// <param name="Tags">Points that it judged a value of.</param>
/// <param name="Newest">Those of them whose judged value is the newest.</param>
/// <param name="Findings">What it found.</param>
internal sealed record Judged(IReadOnlyList<string> Tags, IReadOnlyList<string> Newest, IReadOnlyList<OpenFinding> Findings)
{
    /// <summary>False when every value that it judged is older than another one: it says nothing about now.</summary>
    public bool Counts => Tags.Count == 0 || Newest.Count > 0;

    /// <summary>The findings without those of the corrected entry, as it was typed and as it was corrected before, wherever they stand again.</summary>
    public static ImmutableDictionary<string, ImmutableList<OpenFinding>> Without(
        ImmutableDictionary<string, ImmutableList<OpenFinding>> findings, Correction correction)
    {
        bool StillFound(Finding old) => correction.Findings.Any(f => f.Code == old.Code && f.Point == old.Point);
        var builder = findings.ToBuilder();
        foreach (var (tag, open) in findings)
            Set(builder, tag, open.RemoveAll(f => f.IsOf(correction.Target) || (f.Finding.Of == correction.Target && !StillFound(f.Finding))));
        return builder.ToImmutable();
    }

    /// <summary>
    /// A point's newest value brings its findings along and clears the earlier ones. A finding about a point without a value
    /// here (a calculation that uses it, say) joins those that stand, once for each code.
    /// </summary>
    public ImmutableDictionary<string, ImmutableList<OpenFinding>> Apply(ImmutableDictionary<string, ImmutableList<OpenFinding>> findings)
    {
        if (!Counts)
            return findings;
        var builder = findings.ToBuilder();
        foreach (var tag in Newest)
            builder.Remove(tag);
        foreach (var found in Findings.Where(Stands))
        {
            var tag = found.Finding.Point ?? "";
            var standing = builder.TryGetValue(tag, out var open) ? open : [];
            Set(builder, tag, standing.RemoveAll(old => old.Seq != found.Seq && old.Finding.Code == found.Finding.Code).Add(found));
        }

        return builder.ToImmutable();
    }

    private bool Stands(OpenFinding found) =>
        found.Finding.Point is not { } point || Has(Newest, point) || !Has(Tags, point);

    private static bool Has(IReadOnlyList<string> tags, string tag) => tags.Contains(tag, StringComparer.OrdinalIgnoreCase);

    private static void Set(
        ImmutableDictionary<string, ImmutableList<OpenFinding>>.Builder builder, string tag, ImmutableList<OpenFinding> findings)
    {
        if (findings.IsEmpty)
            builder.Remove(tag);
        else
            builder[tag] = findings;
    }
}
