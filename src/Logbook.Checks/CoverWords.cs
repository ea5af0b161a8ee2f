using Logbook.Plant;

namespace Logbook.Checks;

/// <summary>What an uncertainty comes from, in words.</summary>
internal static class CoverWords
{
    public const string Method = "method";

    /// <summary>A point by its description; one of a sample whose readings begin alike by what sets it apart: <c>end point B</c>.</summary>
    public static string Name(Site site, Point point)
    {
        var comma = point.Description.LastIndexOf(", ", StringComparison.Ordinal);
        var alike = comma > 0 && point.Sample is not null && site.Points.All(p =>
            !point.Sample.Equals(p.Sample, StringComparison.Ordinal) || p.Description.StartsWith(point.Description[..comma], StringComparison.Ordinal));
        var name = alike ? point.Description[(comma + 2)..] : point.Description;
        return name.Length > 1 && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
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
