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
    public static string Plain(Point point)
    {
        var name = point.Description.Split(',')[0];
        var word = name.Split(' ')[0];
        return word.Skip(1).All(char.IsLower) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
    }

    /// <summary>The sources that make up four fifths of the variance, three at most, the largest first.</summary>
    public static string Covers(IEnumerable<(string Name, double Moved)> contributions)
    {
        var shares = contributions.GroupBy(c => c.Name, StringComparer.Ordinal)
            .Select(g => (Name: g.Key, Variance: g.Sum(c => c.Moved * c.Moved)))
            .Where(c => c.Variance > 0)
            .OrderByDescending(c => c.Variance).ThenBy(c => c.Name, StringComparer.Ordinal).ToList();
        var enough = 0.8 * shares.Sum(c => c.Variance);
        var named = new List<string>();
        for (double covered = 0; named.Count < Math.Min(3, shares.Count) && covered < enough; covered += shares[named.Count - 1].Variance)
        {
            named.Add(shares[named.Count].Name);
        }

        return named.Count == shares.Count ? Words.And(named) : Words.And([.. named, "less from others"]);
    }
}
