using System.Runtime.InteropServices;
using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>What an uncertainty comes from, in words.</summary>
internal static class CoverWords
{
    public const string Method = "method";

    /// <summary>What a titration's end points have in common.</summary>
    private const string Burette = "burette";

    /// <summary>The end points of a titration by their instrument; any other point by its description up to the first comma.</summary>
    public static string Name(Point point)
    {
        if (point.Sample is not null && point.Unit.Dimension.Equals("volume", StringComparison.Ordinal))
        {
            return Burette;
        }

        return Plain(point);
    }

    /// <summary>The description up to its first comma, as it stands inside a sentence.</summary>
    public static string Plain(Point point) => FirstLetter.Small(point.Description.Split(',')[0]);

    /// <summary>The sources that make up four fifths of the variance, three at most, the largest first.</summary>
    public static string Covers(IReadOnlyList<Contribution> contributions)
    {
        var variances = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (source, moved) in contributions)
        {
            CollectionsMarshal.GetValueRefOrAddDefault(variances, source, out _) += moved * moved;
        }

        var shares = variances.Where(v => v.Value > 0).ToList();
        shares.Sort((a, b) => a.Value != b.Value ? b.Value.CompareTo(a.Value) : string.CompareOrdinal(a.Key, b.Key));
        var enough = 0.8 * shares.Sum(c => c.Value);
        var named = new List<string>();
        for (double covered = 0; named.Count < Math.Min(3, shares.Count) && covered < enough; covered += shares[named.Count - 1].Value)
        {
            named.Add(shares[named.Count].Key);
        }

        return named.Count == shares.Count ? Words.And(named) : Words.And([.. named, "less from others"]);
    }
}
